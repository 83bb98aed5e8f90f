//! Closures in boxes.
//!
//! The language's own traits of closures build on one another, so that a box of any of them brings along two more ways
//! to call it, each a function of its own in the bundle. Hundreds of closures are called in one way only: these.

/// Reads something.
pub trait Read<T> {
    /// What it is now.
    fn read(&self) -> T;
}

impl<T, F: Fn() -> T> Read<T> for F {
    fn read(&self) -> T {
        self()
    }
}

/// Does something.
pub trait Act {
    /// Does it.
    fn act(&mut self);
}

impl<F: FnMut()> Act for F {
    fn act(&mut self) {
        self();
    }
}

/// Does something with a value.
pub trait ActOn<T> {
    /// Does it with that value.
    fn act_on(&mut self, value: T);
}

impl<T, F: FnMut(T)> ActOn<T> for F {
    fn act_on(&mut self, value: T) {
        self(value);
    }
}
