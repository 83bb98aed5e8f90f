//! What stands between the parts of a prepared catalogue: characters that no sentence has. The build script uses them
//! too.

/// Between two sentences.
pub const SENTENCE: char = '\u{1e}';
/// Between a name and what it stands for.
pub const TEXT: char = '\u{1f}';
/// Before the name of a variable to be filled in.
pub const VARIABLE: char = '\u{1}';
/// Behind the name of a variable to be filled in.
pub const VARIABLE_END: char = '\u{2}';
/// Before the name of the variable whose plural form chooses between variants.
pub const CHOICE: char = '\u{3}';
/// Before each variant: its name, [`TEXT`], and what it says. The last is taken when no other has the right name.
pub const VARIANT: char = '\u{4}';
/// Behind the last variant.
pub const CHOICE_END: char = '\u{5}';
