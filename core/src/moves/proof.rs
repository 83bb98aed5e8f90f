//! All sets that are cheaper than one, where they are few enough to be assessed one by one.

/// The sets of changes that cost less than `cost`, with at most one of each group, the cheapest last; none if there are more
/// than `most`. `costs` may be in any order.
pub fn cheaper_sets(costs: &[u64], groups: &[Vec<usize>], cost: u64, most: usize) -> Option<Vec<Vec<usize>>> {
    let mut order: Vec<usize> = (0..costs.len()).filter(|at| costs.get(*at).is_some_and(|own| *own < cost)).collect();
    order.sort_by_key(|at| costs.get(*at).copied());
    let mut found: Vec<(u64, Vec<usize>)> = Vec::new();
    // Depth first: a set, what it costs, and the place in the order from which on it may grow.
    let mut open: Vec<(Vec<usize>, u64, usize)> = vec![(Vec::new(), 0, 0)];
    while let Some((set, spent, from)) = open.pop() {
        for (place, at) in order.iter().enumerate().skip(from) {
            let sum = spent.saturating_add(costs.get(*at).copied().unwrap_or(u64::MAX));
            // All that follow cost as much or more.
            if sum >= cost {
                break;
            }
            let excludes = |group: &&Vec<usize>| group.contains(at) && set.iter().any(|other| group.contains(other));
            if groups.iter().any(|group| excludes(&group)) {
                continue;
            }
            let mut larger = set.clone();
            larger.push(*at);
            let mut sorted = larger.clone();
            sorted.sort_unstable();
            found.push((sum, sorted));
            if found.len() > most {
                return None;
            }
            open.push((larger, sum, place + 1));
        }
    }
    found.sort_by(|a, b| b.cmp(a));
    Some(found.into_iter().map(|(_, set)| set).collect())
}
