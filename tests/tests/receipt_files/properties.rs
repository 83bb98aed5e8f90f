//! What holds for every file, and the `csv` crate on the same bytes.

use kerbstead_core::papers::Marks;
use kerbstead_core::papers::receipts::{
    DateOrder, Meaning, Preview, Reason, Row, Settings, preview, receipt_table, receipts_of,
};
use proptest::prelude::*;

use super::{english, settings};

/// A cell of a generated table: what makes readers stumble is frequent.
fn cell() -> impl Strategy<Value = String> {
    prop::collection::vec(
        prop::sample::select(vec!["a", "é", "7", " ", "\"", ",", ";", "\t", "|", "\n", "\r", "\r\n", "'"]),
        0..6,
    )
    .prop_map(|parts| parts.concat())
}

fn table() -> impl Strategy<Value = Vec<Vec<String>>> {
    (2_usize..5).prop_flat_map(|columns| prop::collection::vec(prop::collection::vec(cell(), columns), 1..8))
}

/// Text as a stranger could send it, with the marks that matter.
fn text() -> impl Strategy<Value = String> {
    let part = prop::sample::select(vec![
        "date",
        "amount",
        "total",
        "name",
        "receipt",
        "1",
        "03/04/2027",
        "2027-04-18",
        "1.234",
        "1,50",
        "-3",
        "\"",
        "\"\"",
        ",",
        ";",
        "\t",
        "|",
        "\n",
        "\r\n",
        "\r",
        " ",
        "'",
        "é",
        "sep=",
        "€",
        "(",
        ")",
        "\u{a0}",
        "kr",
        "\u{feff}",
        "\0",
    ]);
    prop::collection::vec(part, 0..80).prop_map(|parts| parts.concat())
}

/// Each line of the text that has anything in it is of the headings, of a row or of a kept one, which have it as it is;
/// no two have the same.
fn nothing_is_lost(file: &str, preview: &Preview) {
    let mut parts: Vec<(u32, Option<&str>)> = preview.rows.iter().map(|row| (row.line, None)).collect();
    parts.extend(preview.kept.iter().map(|kept| (kept.line, Some(kept.text.as_str()))));
    if preview.headings_line > 0 {
        parts.push((preview.headings_line, Some(&preview.headings_text)));
    }
    parts.sort_unstable();
    let unix = |text: &str| text.replace("\r\n", "\n").replace('\r', "\n");
    let text = unix(file.strip_prefix('\u{feff}').unwrap_or(file));
    let lines: Vec<&str> = text.split('\n').collect();
    let is_blank =
        |text: &str| text.chars().all(|letter| letter.is_whitespace() || letter == '"' || letter == preview.delimiter);
    let ends = parts.iter().skip(1).map(|(line, _)| *line).chain([u32::try_from(lines.len()).unwrap() + 1]);
    let above = lines[..parts[0].0 as usize - 1].join("\n");
    assert!(is_blank(&above) || above.starts_with("sep="), "{file:?}: {preview:?}");
    for ((line, part), end) in parts.iter().zip(ends) {
        assert!(*line < end, "{file:?}: {preview:?}");
        let whole = lines[*line as usize - 1..end as usize - 1].join("\n");
        let behind = part.map(|part| whole.strip_prefix(&unix(part)).map(is_blank));
        assert!(behind.is_none_or(|behind| behind == Some(true)), "{file:?}: {preview:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_bytes_make_it_panic(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        let _ = preview(&bytes, &settings("EUR"));
    }

    #[test]
    fn no_text_makes_it_panic_or_lose_a_row(text in text(), comma in any::<bool>(), order in any::<bool>()) {
        let answers = Settings {
            decimal: comma.then_some(','),
            order: order.then_some(DateOrder::DayFirst),
            ..settings("EUR")
        };
        if let Ok(preview) = preview(text.as_bytes(), &answers) {
            nothing_is_lost(&text, &preview);
            let receipts = receipts_of(&preview.rows);
            let lines: usize = receipts.iter().map(|receipt| receipt.lines.len()).sum();
            prop_assert_eq!(lines, preview.rows.iter().filter(|row| row.amount.is_some()).count());
            let _ = (preview.kept_text(), receipt_table(&receipts, &english(), Marks { decimal: ',' }));
        }
    }

    /// The cells by the independent reader are those by ours. What ours keeps of them are names and places, trimmed; an
    /// amount of 1 stands in each row, so that every row can be read.
    #[test]
    fn cells_are_read_as_the_independent_reader_reads_them(rows in table(), delimiter in 0_usize..4, crlf in any::<bool>()) {
        let delimiter = [b',', b';', b'\t', b'|'][delimiter];
        let terminator = if crlf { csv::Terminator::CRLF } else { csv::Terminator::Any(b'\n') };
        let mut writer = csv::WriterBuilder::new().delimiter(delimiter).terminator(terminator).from_writer(Vec::new());
        for row in &rows {
            writer.write_record([&row[0], &row[1], "1"]).unwrap();
        }
        compare(&writer.into_inner().unwrap(), delimiter);
    }

    /// The same for text that no writer made: quotes in the middle of cells, cells after quotes.
    #[test]
    fn loose_text_is_read_as_the_independent_reader_reads_it(rows in table()) {
        let text: String = rows.iter().map(|row| row[..2].join(",") + ",1\n").collect();
        compare(text.as_bytes(), b',');
    }
}

/// Both readers on the same bytes, with three columns: place, name, amount.
fn compare(bytes: &[u8], delimiter: u8) {
    let said = Settings {
        delimiter: Some(char::from(delimiter)),
        decimal: Some('.'),
        headings_line: Some(0),
        columns: Some(vec![Meaning::Place, Meaning::Name, Meaning::Amount]),
        ..settings("EUR")
    };
    let mut reader =
        csv::ReaderBuilder::new().has_headers(false).flexible(true).delimiter(delimiter).from_reader(bytes);
    let theirs: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let theirs: Vec<_> = theirs.iter().filter(|record| record.iter().any(|cell| !cell.trim().is_empty())).collect();
    let Ok(ours) = preview(bytes, &said) else { return assert!(theirs.is_empty(), "{theirs:?}") };
    if ours.kept.iter().any(|kept| kept.reason == Reason::QuoteOpen) {
        // Theirs takes the rest of the text for the cell then.
        return;
    }
    assert_eq!(ours.rows.len() + ours.kept.len(), theirs.len(), "{ours:?} {theirs:?}");
    // The apostrophe that guards against formulas is taken off; of what it guards, only these are in the cells here.
    let unguarded = |text: &str| match text.trim().strip_prefix('\'') {
        Some(bare) if bare.starts_with(['\t', '\r']) => bare.to_owned(),
        _ => text.trim().to_owned(),
    };
    let mut lines: Vec<(u32, Option<&Row>)> = ours.rows.iter().map(|row| (row.line, Some(row))).collect();
    lines.extend(ours.kept.iter().map(|kept| (kept.line, None)));
    lines.sort_by_key(|(line, _)| *line);
    for ((_, row), cells) in lines.iter().zip(&theirs) {
        let is_sound = cells.len() == 3 && cells[2].trim() == "1";
        assert!(row.is_some() || !is_sound, "{ours:?} {theirs:?}");
        if let Some(row) = row {
            assert_eq!((&row.place, &row.name), (&unguarded(&cells[0]), &unguarded(&cells[1])), "{theirs:?}");
        }
    }
}
