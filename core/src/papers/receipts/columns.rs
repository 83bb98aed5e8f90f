//! What the columns of a file mean, by their headings and by what is in them.

use super::amounts::{Coin, NoAmount, amount};
use super::days::{DateOrder, day};
use super::records::Record;

/// What a column is taken for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meaning {
    /// The day it was paid.
    Day,
    /// What was paid for the line.
    Amount,
    /// What came back: a refund, or the column of a bank for money that comes in.
    Back,
    /// What the receipt states in all, on any or all of its lines.
    Total,
    /// What was bought.
    Name,
    /// Where.
    Place,
    /// The number of an item of the kit.
    Item,
    /// Whether more of that item is still to be paid.
    MoreFollows,
    /// What tells receipts of several lines apart.
    Receipt,
    /// The currency's code.
    Currency,
    /// Nothing that is needed here.
    Nothing,
}

impl Meaning {
    /// All of them.
    pub const ALL: [Self; 11] = [
        Self::Day,
        Self::Amount,
        Self::Back,
        Self::Total,
        Self::Name,
        Self::Place,
        Self::Item,
        Self::MoreFollows,
        Self::Receipt,
        Self::Currency,
        Self::Nothing,
    ];
}

/// Words of headings in a few languages, in small letters; the first row that has one of a heading's words decides, so
/// that a `Total amount` is a total. Common practice, no source.
const HEADINGS: [(Meaning, &str); 11] = [
    (Meaning::Nothing, "balance saldo solde kontostand quantity qty menge anzahl unit net netto category kategorie"),
    (Meaning::Nothing, TAXES),
    (Meaning::Day, "day date booked posted datum tag buchungstag fecha data dato jour giorno dag"),
    (Meaning::Currency, "currency währung devise moneda valuta divisa moeda"),
    (Meaning::Total, "total totals sum summe gesamt gesamtbetrag totaal totale"),
    (Meaning::Back, "credit refund refunds received deposit haben abono crédit"),
    (
        Meaning::Amount,
        "amount amounts price cost value debit withdrawal betrag preis umsatz soll importe precio cargo montant prix \
         débit importo prezzo bedrag prijs valor preço kwota",
    ),
    (
        Meaning::Place,
        "place shop store merchant payee vendor seller where händler empfänger laden geschäft ort comercio \
                      tienda lugar marchand magasin negozio luogo winkel loja",
    ),
    (
        Meaning::Receipt,
        "receipt invoice bill ticket reference beleg belegnummer rechnung quittung factura recibo facture \
                        reçu scontrino fattura bon",
    ),
    (Meaning::Item, "kit"),
    (Meaning::MoreFollows, "still"),
];

/// The rows for names come last, because a `Shop name` is a place.
const NAMES: &str = "name item what description article product details text memo purpose artikel bezeichnung \
                     verwendungszweck buchungstext beschreibung descripción concepto artículo libellé désignation \
                     descrizione causale omschrijving descrição";

const TAXES: &str = "tax taxes vat gst mwst ust iva tva btw moms";

/// With these, a heading says that the tax is in the amount.
const WITH_TAX: &str = "with incl including inkl inklusive gross brutto ttc incluido";

/// What a heading says, if it is known.
pub(super) fn meaning_of(heading: &str) -> Option<Meaning> {
    let heading: String = heading.chars().map(small).collect();
    match heading.trim() {
        "paid in" | "money in" => return Some(Meaning::Back),
        "paid out" | "money out" => return Some(Meaning::Amount),
        _ => {}
    }
    let any_of = |words: &str| {
        let mut said = heading.split(|letter: char| !is_letter(letter)).filter(|word| !word.is_empty());
        said.any(|word| words.split(' ').any(|known| known == word))
    };
    let is_with_tax = any_of(WITH_TAX);
    let known = HEADINGS.iter().find(|(_, words)| any_of(words) && !(is_with_tax && *words == TAXES));
    known.map(|(meaning, _)| *meaning).or_else(|| any_of(NAMES).then_some(Meaning::Name))
}

/// The small letter of a capital of the languages above. The tables of all languages would be 10,000 bytes more for a
/// phone to load.
fn small(letter: char) -> char {
    match letter {
        'À'..='Þ' if letter != '×' => char::from_u32(u32::from(letter) + 32).unwrap_or(letter),
        _ => letter.to_ascii_lowercase(),
    }
}

/// Whether it is a letter of those languages.
pub(super) fn is_letter(letter: char) -> bool {
    letter.is_ascii_alphabetic() || letter >= 'À' && !matches!(letter, '×' | '÷') && letter < '\u{2000}'
}

/// Headings are looked for in so many records.
const MOST_BEFORE: usize = 20;

/// The position of the record that holds the headings: the first with two of them that are known, or with as many as it
/// has cells, and with no number. Failing that the first record, if it is without digits and others are not.
pub(super) fn headings_of(records: &[Record]) -> Option<usize> {
    let has_digit = |record: &Record| record.cells.iter().any(|cell| cell.contains(|it: char| it.is_ascii_digit()));
    let is_headed = |record: &Record| {
        let known = record.cells.iter().filter(|cell| meaning_of(cell).is_some()).count();
        known >= record.cells.len().min(2) && known > 0 && !record.cells.iter().any(|cell| is_value(cell))
    };
    let headed = records.iter().take(MOST_BEFORE).position(is_headed);
    let is_words = |first: &Record| !has_digit(first) && !first.is_open;
    let is_first = || records.first().is_some_and(is_words) && records.iter().skip(1).any(has_digit);
    headed.or_else(|| is_first().then_some(0))
}

fn is_value(cell: &str) -> bool {
    cell.contains(|letter: char| letter.is_ascii_digit()) && (is_day(cell) || is_amount(cell))
}

fn is_day(cell: &str) -> bool {
    [DateOrder::DayFirst, DateOrder::MonthFirst].into_iter().any(|order| day(cell, order).is_some())
}

/// Whether it can be an amount of some currency that has cents.
fn is_amount(cell: &str) -> bool {
    let coin = Coin { code: "", digits: 2 };
    let read = |decimal| amount(cell, decimal, coin);
    ['.', ','].into_iter().any(|decimal| matches!(read(decimal), Ok(_) | Err(NoAmount::OtherCurrency)))
}

/// So many records show what a column without a known heading holds.
const SAMPLE: usize = 200;

/// What each of so many columns means: each thing once, by the headings; what is missing then, by what is in those
/// columns that no heading tells of.
pub(super) fn meanings(headings: Option<&Record>, records: &[Record], columns: usize) -> Vec<Meaning> {
    let mut meanings: Vec<Option<Meaning>> = vec![None; columns];
    for (at, cell) in headings.iter().flat_map(|record| record.cells.iter().enumerate().take(columns)) {
        let meaning = meaning_of(cell);
        let is_taken = meaning.is_some() && meanings.contains(&meaning);
        meanings[at] = if is_taken { Some(Meaning::Nothing) } else { meaning };
    }
    let sample = &records[..records.len().min(SAMPLE)];
    let all = |at: usize, test: fn(&str) -> bool| {
        let mut cells = sample.iter().filter_map(|record| record.cells.get(at)).filter(|cell| !cell.trim().is_empty());
        let first = cells.next();
        first.is_some_and(|first| test(first)) && cells.all(|cell| test(cell))
    };
    let has_decimals: fn(&str) -> bool = |cell| is_amount(cell) && cell.contains(['.', ',']);
    let is_text: fn(&str) -> bool = |cell| !is_value(cell);
    fill(&mut meanings, Meaning::Day, &|at| all(at, is_day));
    if !meanings.contains(&Some(Meaning::Back)) && !meanings.contains(&Some(Meaning::Total)) {
        fill(&mut meanings, Meaning::Amount, &|at| all(at, has_decimals));
        fill(&mut meanings, Meaning::Amount, &|at| all(at, is_amount));
    }
    fill(&mut meanings, Meaning::Name, &|at| all(at, is_text));
    let mut meanings: Vec<Meaning> = meanings.into_iter().map(|it| it.unwrap_or(Meaning::Nothing)).collect();
    if !meanings.contains(&Meaning::Amount) {
        // All that is known of a purchase is what it came to.
        meanings.iter_mut().filter(|it| **it == Meaning::Total).for_each(|it| *it = Meaning::Amount);
    }
    meanings
}

/// Takes the first column that nothing is known of and that passes for it, unless there is one already.
fn fill(meanings: &mut [Option<Meaning>], meaning: Meaning, passes: &dyn Fn(usize) -> bool) {
    if meanings.contains(&Some(meaning)) {
        return;
    }
    let found = (0..meanings.len()).find(|at| meanings[*at].is_none() && passes(*at));
    if let Some(found) = found {
        meanings[found] = Some(meaning);
    }
}
