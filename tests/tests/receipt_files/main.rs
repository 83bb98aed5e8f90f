//! Tables of receipts as other programs write them: read, previewed, kept aside; against the `csv` crate as an independent
//! reader and writer of RFC 4180. The files are invented, in the forms that such tables have.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

mod properties;

use std::fmt::Write;
use std::time::Instant;

use jiff::civil::date;
use kerbstead_core::money::{Receipt, ReceiptLine};
use kerbstead_core::papers::Marks;
use kerbstead_core::papers::receipts::{
    Ask, DateOrder, Encoding, MOST_BYTES, MOST_ROWS, Meaning, Preview, Reason, Refused, Row, Settings, preview,
    receipt_table, receipts_of,
};
use kerbstead_core::plan::{Money, date_text};
use kerbstead_core::words::{Plain, Units, Words};
use rust_decimal::Decimal;

fn settings(currency: &str) -> Settings {
    Settings { currency: currency.into(), ..Settings::default() }
}

fn euros(file: &str) -> Preview {
    preview(file.as_bytes(), &settings("EUR")).unwrap()
}

fn money(text: &str) -> Money {
    text.parse().unwrap()
}

/// What was read, a line a row: day, place, name, amount, total.
fn told(preview: &Preview) -> Vec<String> {
    let amount = |amount: Option<Money>| amount.map_or_else(String::new, |amount| amount.to_string());
    let row = |row: &Row| {
        let on = row.on.map_or_else(String::new, date_text);
        [on, row.place.clone(), row.name.clone(), amount(row.amount), amount(row.total)].join("|")
    };
    preview.rows.iter().map(row).collect()
}

fn kept(preview: &Preview) -> Vec<(u32, &str, Reason)> {
    preview.kept.iter().map(|kept| (kept.line, kept.text.as_str(), kept.reason.clone())).collect()
}

/// Forms that are met in the world: of a spreadsheet, a bank here and there, a till, a hand.
#[test]
fn files_of_many_forms_are_read() {
    let cases: [(&str, &str, &[&str]); 13] = [
        // With a point and commas, quotes around text, in any order.
        (
            "USD",
            "Amount,Description,Date\r\n\"1,234.50\",\"Mattress, foam\",2027-04-18\r\n3,Nails,2027-04-19\r\n",
            &["2027-04-18||Mattress, foam|1234.50|", "2027-04-19||Nails|3|"],
        ),
        // A spreadsheet where the comma is the decimal mark, with its own first line.
        ("EUR", "sep=;\nDatum;Artikel;Preis\n18.04.2027;Dämmung;1.234,5\n", &["2027-04-18||Dämmung|1234.5|"]),
        // A bank: lines above, a currency, what was paid is negative, a balance that is nobody's business.
        (
            "EUR",
            "Account 12;;;;\n;;;;\nBuchungstag;Empfänger;Verwendungszweck;Betrag;Saldo\n\
             14.04.27;Baumarkt;Latten;-17,99 €;1.000,00 €\n15.04.27;Baumarkt;Rückgabe;3,00 €;1.003,00 €\n\
             16.04.27;Markt;Brot;-2,10 €;1.000,90 €\n",
            &[
                "2027-04-14|Baumarkt|Latten|17.99|",
                "2027-04-15|Baumarkt|Rückgabe|-3.00|",
                "2027-04-16|Markt|Brot|2.10|",
            ],
        ),
        // A bank with a column for each direction, and months by their name.
        (
            "GBP",
            "Date,Payee,Paid out,Paid in,Balance\n18 Apr 2027,Timber yard,£42.00,,£58.00\n19-Apr-27,Timber yard,,£2.00,£60.00\n",
            &["2027-04-18|Timber yard||42.00|", "2027-04-19|Timber yard||-2.00|"],
        ),
        // Tabs, apostrophes and strokes for no cents.
        ("CHF", "Laden\tBetrag\nHolz\t1'250.–\nSeil\tCHF 12.50\n", &["|Holz||1250|", "|Seil||12.50|"]),
        // Spaces between thousands, a narrow one among them, and old ends of lines.
        ("EUR", "libellé|prix\rvis|1 250,00\rbois|1\u{202f}000,5\r", &["||vis|1250.00|", "||bois|1000.5|"]),
        // Groups of two as in India, a sign before.
        ("INR", "item,cost\nfan,\"₹1,25,000.00\"\nrope,Rs.50\n", &["||fan|125000.00|", "||rope|50|"]),
        // Brackets and a sign behind for what is negative.
        (
            "USD",
            "item,cost\nlamp,9.50\nbulb,4.25\nrefund,(9.50)\ncoupon,1.00-\n",
            &["||lamp|9.50|", "||bulb|4.25|", "||refund|-9.50|", "||coupon|-1.00|"],
        ),
        // No headings at all; the thirteenth day tells the order.
        (
            "USD",
            "04/13/2027,Rope,4.00\n04/14/2027,Hooks,2.50\n",
            &["2027-04-13||Rope|4.00|", "2027-04-14||Hooks|2.50|"],
        ),
        // Headings in a language that is not known here.
        ("CZK", "Kdy;Co;Kolik\n18.4.2027;Lano;120,50 Kč\n", &["2027-04-18||Lano|120.50|"]),
        // A time of day, and lines with nothing in them.
        (
            "EUR",
            "date,amount,shop\n\n2027-04-18T10:15:00Z,5.00,Yard\n,,\n2027-04-19 08:00,6.00,Yard\n\n",
            &["2027-04-18|Yard||5.00|", "2027-04-19|Yard||6.00|"],
        ),
        // Yen have no decimals, so that there is nothing to ask.
        ("JPY", "date,amount\n2027-04-18,\"1,234\"\n", &["2027-04-18|||1234|"]),
        // Cells over several lines, quotes in them, a row without its end.
        (
            "EUR",
            "name;amount\n\"Bolts \"\"M8\"\"\nand nuts; 20\";\"3,50\"\n'=x;1,00",
            &["||Bolts \"M8\"\nand nuts; 20|3.50|", "||=x|1.00|"],
        ),
    ];
    for (currency, file, expected) in cases {
        for bytes in [file.as_bytes().to_vec(), [b"\xef\xbb\xbf", file.as_bytes()].concat(), utf16(file)] {
            let preview = preview(&bytes, &settings(currency)).unwrap();
            assert_eq!(told(&preview), expected, "{file}: {preview:?}");
            assert!(preview.asks.is_empty(), "{file}: {:?}", preview.asks);
            assert!(preview.kept.iter().all(|kept| kept.reason == Reason::AboveHeadings), "{file}: {:?}", preview.kept);
        }
    }
}

fn utf16(text: &str) -> Vec<u8> {
    std::iter::once(0xfeff).chain(text.encode_utf16()).flat_map(u16::to_le_bytes).collect()
}

#[test]
fn letters_of_older_programs_are_read() {
    let file = b"Artikel;Preis\nD\xe4mmung;3,50 \x80\n";
    let preview = preview(file, &settings("EUR")).unwrap();
    assert_eq!((preview.encoding, told(&preview)), (Encoding::Windows1252, vec!["||Dämmung|3.50|".to_owned()]));
}

/// Each bad row has its line and its reason and stands there as it was; the others are read all the same.
#[test]
fn bad_rows_are_kept_aside_with_line_and_reason() {
    let file = "day;name;amount\n2027-04-18;\"a\nb\";1,00\n2027-04-31;c;1,00\n2027-04-19;d;1;00\n2027-04-19;e\n\
                2027-04-19;f;\n2027-04-19;g; 12 kg \n2027-04-19;h;$5\n2027-04-19;i;99999999999\n;Summe;7,00\n\
                2027-04-20;j;2,00;;\n2027-04-21;\"k;3,00\n2027-04-22;l;4,00";
    let preview = euros(file);
    assert_eq!(
        kept(&preview),
        [
            (4, "2027-04-31;c;1,00", Reason::NotADay { column: 0 }),
            (5, "2027-04-19;d;1;00", Reason::Cells { expected: 3, found: 4 }),
            (6, "2027-04-19;e", Reason::Cells { expected: 3, found: 2 }),
            (7, "2027-04-19;f;", Reason::NoAmount),
            (8, "2027-04-19;g; 12 kg ", Reason::NotAnAmount { column: 2 }),
            (9, "2027-04-19;h;$5", Reason::OtherCurrency { column: 2 }),
            (10, "2027-04-19;i;99999999999", Reason::TooMuch { column: 2 }),
            (11, ";Summe;7,00", Reason::NotADay { column: 0 }),
            (13, "2027-04-21;\"k;3,00", Reason::QuoteOpen),
        ]
    );
    assert_eq!(told(&preview), ["2027-04-18||a\nb|1.00|", "2027-04-20||j|2.00|", "2027-04-22||l|4.00|"]);
    let lines: Vec<u32> = preview.rows.iter().map(|row| row.line).collect();
    assert_eq!(lines, [2, 12, 14]);
    let again = preview.kept_text();
    assert!(again.starts_with("day;name;amount\r\n2027-04-31;c;1,00\r\n"));
}

#[test]
fn what_cannot_be_told_is_asked_and_nothing_is_read_meanwhile() {
    let file = "date;amount\n03/04/2027;1.234\n05/04/2027;2.000\n";
    let kuwait = settings("KWD");
    let asked = preview(file.as_bytes(), &kuwait).unwrap();
    let (order, decimal) = ("03/04/2027".to_owned(), "1.234".to_owned());
    assert_eq!(asked.asks, [Ask::DecimalMark { example: decimal }, Ask::DateOrder { example: order }]);
    assert_eq!((asked.decimal, asked.order, asked.rows.len(), asked.kept.len()), (None, None, 0, 2));
    assert!(asked.kept.iter().all(|kept| kept.reason == Reason::Waits));
    for (decimal, order, first) in
        [(',', DateOrder::DayFirst, "2027-04-03|||1234|"), ('.', DateOrder::MonthFirst, "2027-03-04|||1.234|")]
    {
        let answers = Settings { decimal: Some(decimal), order: Some(order), ..kuwait.clone() };
        let read = preview(file.as_bytes(), &answers).unwrap();
        assert_eq!((read.asks.len(), read.kept.len(), told(&read)[0].as_str()), (0, 0, first));
    }
}

#[test]
fn cells_that_contradict_one_another_are_asked_about_too() {
    let preview = euros("date;amount\n13/04/2027;1,50\n04/13/2027;1.50\n");
    assert_eq!(preview.asks.len(), 2, "{:?}", preview.asks);
    let answers = Settings { decimal: Some(','), order: Some(DateOrder::DayFirst), ..settings("EUR") };
    let read = kerbstead_core::papers::receipts::preview(b"date;amount\n13/04/2027;1,50\n04/13/2027;1.50\n", &answers);
    let read = read.unwrap();
    assert_eq!(told(&read), ["2027-04-13|||1.50|"]);
    assert_eq!(kept(&read), [(3, "04/13/2027;1.50", Reason::NotADay { column: 0 })]);
}

#[test]
fn a_day_that_is_the_same_either_way_asks_nothing() {
    assert!(euros("date;amount\n04/04/2027;1,50\n2027-03-04;2\n").asks.is_empty());
}

#[test]
fn without_a_column_of_amounts_one_is_asked_for() {
    let file = "a;b\nx;y\nz;w1\n";
    assert_eq!(euros(file).asks, [Ask::AmountColumn]);
    let columns = Some(vec![Meaning::Name, Meaning::Amount]);
    let answers = Settings { columns, ..settings("EUR") };
    let preview = preview(file.as_bytes(), &answers).unwrap();
    assert_eq!(preview.kept.last().unwrap().reason, Reason::NotAnAmount { column: 1 });
}

#[test]
fn what_the_person_says_wins() {
    let file = "18.04.2027|5,00|7,00|x|y\n";
    let said = Settings {
        delimiter: Some('|'),
        headings_line: Some(0),
        columns: Some(vec![Meaning::Day, Meaning::Nothing, Meaning::Amount, Meaning::Place, Meaning::Name]),
        paid_is_negative: Some(true),
        ..settings("EUR")
    };
    let preview = preview(file.as_bytes(), &said).unwrap();
    assert_eq!(told(&preview), ["2027-04-18|x|y|-7.00|"]);
    let nonsense = Settings { delimiter: Some('"'), decimal: Some('7'), columns: Some(Vec::new()), ..said };
    assert_eq!(kerbstead_core::papers::receipts::preview(file.as_bytes(), &nonsense).unwrap().rows.len(), 0);
}

#[test]
fn files_beyond_the_limits_are_refused_whole() {
    let euro = settings("EUR");
    assert_eq!(preview(&vec![b'x'; MOST_BYTES + 1], &euro), Err(Refused::TooLong));
    assert_eq!(preview("1,2\n".repeat(MOST_ROWS + 1).as_bytes(), &euro), Err(Refused::TooManyRows));
    for nothing in [&b""[..], b"\n\n", b"\xef\xbb\xbf", b"sep=;\r\n", b" , ,\n"] {
        assert_eq!(preview(nothing, &euro), Err(Refused::Empty), "{nothing:?}");
    }
    let wide = preview(format!("1{}\n", ",1".repeat(100)).as_bytes(), &euro).unwrap();
    assert_eq!(wide.kept[0].reason, Reason::Cells { expected: 64, found: 101 });
}

/// Files that would take a careless reader the square of their length: each of the longest that is taken. What is
/// measured is compared with another file of the same length, so that a slow machine does not matter.
#[test]
fn the_time_grows_with_the_length_alone() {
    let timed = |pattern: &str| {
        let file = pattern.repeat(MOST_BYTES / pattern.len());
        #[allow(clippy::disallowed_methods, reason = "a test may look at the clock")]
        let start = Instant::now();
        let _ = preview(file.as_bytes(), &settings("EUR"));
        start.elapsed()
    };
    let usual = timed(
        "2027-04-18;\"a lamp of the longer kind, and what it hangs from; of wood, brass, rope, and more of it that makes the line long\";12,50\n",
    );
    for pattern in ["x\",\"\n", "\"\n", "\",\"", ",", "\"\"", "\r", "1,1\"\n\"", "'", "1.", "\"a\n\",\"\n", ";\"\n"] {
        let time = timed(pattern);
        assert!(time < usual * 40, "{pattern:?}: {time:?}, {usual:?}");
    }
}

fn english() -> Words<Plain> {
    Words::english(Plain, Units::Metric, "EUR")
}

fn receipts() -> Vec<Receipt> {
    let line = |name: &str, amount: &str, item| ReceiptLine {
        name: name.into(),
        amount: money(amount),
        item,
        ..ReceiptLine::default()
    };
    let half_paid = ReceiptLine { more_follows: true, ..line("Rope", "1234.00", Some(9)) };
    vec![
        Receipt {
            on: Some(date(2027, 4, 3)),
            place: "Yard; \"north\"".into(),
            stated: Some(money("14.50")),
            lines: vec![
                line("=SUM(A1)", "12.50", Some(7)),
                line("Hooks,\nbrass", "2.50", None),
                line("", "-0.5", None),
            ],
        },
        Receipt { on: None, place: String::new(), stated: None, lines: vec![half_paid] },
        Receipt { on: Some(date(2027, 5, 12)), place: "Till".into(), stated: Some(money("3")), lines: Vec::new() },
    ]
}

#[test]
fn receipts_come_back_from_their_table() {
    for decimal in ['.', ','] {
        let table = receipt_table(&receipts(), &english(), Marks { decimal });
        let preview = euros(&table);
        assert_eq!((preview.asks.len(), preview.kept.len()), (0, 0), "{preview:?}");
        assert_eq!(receipts_of(&preview.rows), receipts());
    }
}

/// Read by the independent reader, and guarded against formulas.
#[test]
fn the_table_of_receipts_is_rfc_4180() {
    let table = receipt_table(&receipts(), &english(), Marks { decimal: '.' });
    let mut reader = csv::Reader::from_reader(table.trim_start_matches('\u{feff}').as_bytes());
    let rows: Vec<Vec<String>> = reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect();
    assert_eq!(rows.len(), 5);
    assert_eq!(rows[0], ["1", "2027-04-03", "Yard; \"north\"", "'=SUM(A1)", "7", "12.50", "14.50", ""]);
    assert_eq!(rows[3], ["2", "", "", "Rope", "9", "1234.00", "", "yes"]);
    assert_eq!(rows[4], ["3", "2027-05-12", "Till", "", "", "", "3", ""]);
}

#[test]
fn whether_more_is_still_to_be_paid_is_yes_or_no() {
    for (said, more_follows) in [("yes", true), ("TRUE", true), ("Ja", true), ("no", false), ("0", false), ("", false)]
    {
        let rows = euros(&format!("date,kit,amount,still to pay\n2027-04-18,7,1.50,{said}\n")).rows;
        assert_eq!(rows.iter().map(|row| row.more_follows).collect::<Vec<_>>(), [more_follows], "{said}");
    }
    let kept = euros("date,kit,amount,still to pay\n2027-04-18,7,1.50,perhaps\n").kept;
    assert_eq!(kept[0].reason, Reason::NotYesOrNo { column: 3 });
}

#[test]
fn rows_are_receipts_of_their_own_unless_something_joins_them() {
    let alone = receipts_of(&euros("date,shop,amount\n2027-04-18,Yard,1\n2027-04-18,Yard,2\n").rows);
    assert_eq!(alone.len(), 2);
    let two_totals = "bill,amount,total\n1,2.00,5.00\n1,3.00,5.00\n1,4.00,9.00\n1,5.00,\n2,1.00,\n";
    let joined = receipts_of(&euros(two_totals).rows);
    let lines: Vec<_> = joined.iter().map(|receipt| (receipt.lines.len(), receipt.stated)).collect();
    assert_eq!(lines, [(2, Some(money("5.00"))), (2, Some(money("9.00"))), (1, None)]);
}

/// Amounts written by every pair of marks come back, whatever the file does not say being found out.
#[test]
fn amounts_in_every_pair_of_marks_come_back() {
    for (decimal, group) in
        [('.', ","), ('.', " "), ('.', "'"), ('.', "’"), (',', "."), (',', "\u{a0}"), (',', "\u{202f}"), ('.', "")]
    {
        let mut file = String::from("What\tAmount\n");
        let cents = [5, 50, 99, 100, 12_345, 100_000, 123_456, 99_999_999, 100_000_000];
        for cents in cents {
            let whole = (cents / 100).to_string();
            let groups: Vec<String> =
                whole.as_bytes().rchunks(3).rev().map(|group| String::from_utf8_lossy(group).into_owned()).collect();
            writeln!(file, "x\t{}{decimal}{:02}", groups.join(group), cents % 100).unwrap();
        }
        let preview = euros(&file);
        let read: Vec<Option<Money>> = preview.rows.iter().map(|row| row.amount).collect();
        let expected = cents.map(|cents| Some(Money::new(Decimal::new(cents, 2))));
        assert_eq!(read, expected, "{decimal:?} {group:?}");
    }
}
