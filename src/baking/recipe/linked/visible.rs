//! The text that a person would see of a page or of a value with markup in it.

use super::markup::{Piece, Pieces, Tag, is_block, is_open_ended};
use crate::baking::recipe::tidy::entities;

/// What parts two words, the stronger the later.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Gap {
    None,
    Blank,
    Cell,
    Line,
    Paragraph,
}

/// The text of a page, headings apart; its title goes first where no main heading says it.
pub fn page(source: &str) -> String {
    let mut writer = written(source);
    if writer.out.is_empty() {
        return writer.out;
    }
    if !writer.has_main_heading
        && let Some(title) = writer.title.map(line).filter(|title| !title.is_empty())
    {
        writer.out.insert_str(0, "\n\n");
        writer.out.insert_str(0, &title);
    }
    writer.out.push('\n');
    writer.out
}

/// The lines of a piece of markup, the blank ones left out.
pub fn lines(source: &str) -> Vec<String> {
    written(source)
        .out
        .lines()
        .filter(|line| !line.is_empty())
        .map(str::to_owned)
        .collect()
}

/// A piece of markup as one line.
pub fn line(source: &str) -> String {
    lines(source).join(" ")
}

/// The lines of a value in linked data, where markup and entities may stand escaped once more.
pub fn value_lines(value: &str) -> Vec<String> {
    lines(&entities(value))
}

/// A value in linked data as one line.
pub fn value_line(value: &str) -> String {
    line(&entities(value))
}

fn written(source: &str) -> Writer<'_> {
    let mut writer = Writer {
        out: String::new(),
        gap: Gap::None,
        depth: 0,
        is_in_paragraph: false,
        is_kept: false,
        row_has_text: false,
        is_cell_start: false,
        is_after_span: false,
        has_main_heading: false,
        title: None,
    };
    let mut pieces = Pieces::of(source);
    while let Some(piece) = pieces.next() {
        match piece {
            Piece::Text(text) => writer.text(text),
            Piece::Open(tag) => writer.open(tag),
            Piece::Close(name) => writer.close(name),
            Piece::Raw(tag, inside) if tag.is("title") => {
                writer.title.get_or_insert(inside);
            }
            Piece::Raw(..) => {}
        }
    }
    writer
}

struct Writer<'a> {
    out: String,
    /// What goes before the next word.
    gap: Gap,
    /// How many elements on lines of their own are open. Outside of all of them a line break is the writer's own.
    depth: usize,
    /// Whether an element is open whose end may be left out.
    is_in_paragraph: bool,
    /// Whether line breaks are kept as they are.
    is_kept: bool,
    row_has_text: bool,
    is_cell_start: bool,
    is_after_span: bool,
    has_main_heading: bool,
    title: Option<&'a str>,
}

impl<'a> Writer<'a> {
    fn part(&mut self, gap: Gap) {
        self.gap = self.gap.max(gap);
    }

    fn text(&mut self, text: &'a str) {
        let decoded = entities(text);
        for sign in decoded.chars() {
            if sign == '\n' && (self.is_kept || self.depth == 0 && !self.is_in_paragraph) {
                self.part(Gap::Line);
            } else if sign.is_whitespace() {
                self.part(Gap::Blank);
            } else {
                if !self.out.is_empty() {
                    self.out.push_str(match self.gap {
                        Gap::None => "",
                        Gap::Blank => " ",
                        Gap::Cell => "\t",
                        Gap::Line => "\n",
                        Gap::Paragraph => "\n\n",
                    });
                }
                self.gap = Gap::None;
                self.out.push(sign);
                self.row_has_text = true;
                self.is_cell_start = false;
            }
        }
        self.is_after_span = false;
    }

    fn open(&mut self, tag: Tag<'a>) {
        let is_after_span = std::mem::take(&mut self.is_after_span);
        if tag.is("td") || tag.is("th") {
            self.is_in_paragraph = false;
            if self.row_has_text {
                self.gap = Gap::Cell;
                self.is_cell_start = true;
            }
        } else if tag.is("span") {
            // Two spans that touch are set apart by the page's style.
            if is_after_span {
                self.part(Gap::Blank);
            }
        } else if tag.is("sup") {
            // "1<sup>1</sup>/<sub>2</sub>" is one and a half.
            if self.out.ends_with(|last: char| last.is_ascii_digit()) {
                self.part(Gap::Blank);
            }
        } else if is_block(tag.name) {
            self.has_main_heading |= tag.is("h1");
            self.row(tag.name);
            let gap = if is_heading(tag.name) {
                Gap::Paragraph
            } else {
                Gap::Line
            };
            self.line(gap);
            if tag.is("br") || tag.is("hr") {
                return;
            }
            self.is_in_paragraph = is_open_ended(tag.name);
            if !self.is_in_paragraph {
                self.depth += 1;
                self.is_kept |= tag.is("pre");
            }
        }
    }

    fn close(&mut self, name: &str) {
        self.is_after_span = name.eq_ignore_ascii_case("span");
        if is_block(name) {
            self.row(name);
            self.line(Gap::Line);
            self.is_in_paragraph = false;
            if !is_open_ended(name) {
                self.depth = self.depth.saturating_sub(1);
                self.is_kept &= !name.eq_ignore_ascii_case("pre");
            }
        }
    }

    /// A row of a table starts or ends.
    fn row(&mut self, name: &str) {
        if name.eq_ignore_ascii_case("tr") || name.eq_ignore_ascii_case("table") {
            self.row_has_text = false;
            self.is_cell_start = false;
        }
    }

    /// A line ends here; at the start of a cell it would only tear the row apart.
    fn line(&mut self, gap: Gap) {
        if !self.is_cell_start {
            self.part(gap);
        }
    }
}

fn is_heading(name: &str) -> bool {
    matches!(name.as_bytes(), [b'h' | b'H', b'1'..=b'6'])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_reads_as_it_looks() {
        for (source, expected) in [
            ("<p>Mix\n  well.<p>Bake.", "Mix well.\nBake.\n"),
            ("<div>a<br>b<BR/>c</div>", "a\nb\nc\n"),
            (
                "<div>1 cup</div><h2>Method</h2><div>Mix</div>",
                "1 cup\n\nMethod\nMix\n",
            ),
            (
                "<table><tr><td>1 cup</td><td>flour</td></tr><tr><td><p>2</p></td>\n<td><p>eggs</p></td></tr></table>",
                "1 cup\tflour\n2\teggs\n",
            ),
            (
                "<tr><td></td><td>salt</td><td></td></tr><tr><td>a",
                "salt\na\n",
            ),
            ("<p>1<sup>1</sup>/<sub>2</sub> cups", "1 1/2 cups\n"),
            (
                "<p><span>1</span><span>cup</span> <b>f</b>lour",
                "1 cup flour\n",
            ),
            ("<p>&frac12;&nbsp;cup &amp; more &#189;", "½ cup & more ½\n"),
            ("<pre>1 egg\n2 cups flour</pre>", "1 egg\n2 cups flour\n"),
            ("<title>Cake</title><p>1 egg", "Cake\n\n1 egg\n"),
            (
                "<title>Cake | Site</title><h1>Cake</h1><p>1 egg",
                "Cake\n1 egg\n",
            ),
            (
                "<style>p{}</style><script>x<y</script><nav>Home</nav><svg>x</svg><p>a",
                "a\n",
            ),
            ("<div></div>", ""),
        ] {
            assert_eq!(page(source), expected, "{source}");
        }
    }

    #[test]
    fn line_breaks_outside_of_elements_are_the_writer_s() {
        assert_eq!(lines("Mix <b>well</b>.\nBake."), ["Mix well.", "Bake."]);
        assert_eq!(
            lines("<p>Mix\nwell.</p>\nBake.\nCool."),
            ["Mix well.", "Bake.", "Cool."]
        );
    }

    #[test]
    fn values_are_decoded_twice() {
        assert_eq!(
            value_line("&amp;frac12; cup &lt;b&gt;flour&lt;/b&gt;"),
            "½ cup flour"
        );
        assert_eq!(
            value_lines("&lt;p&gt;Mix.&lt;/p&gt;&lt;p&gt;Bake.&lt;/p&gt;"),
            ["Mix.", "Bake."]
        );
    }
}
