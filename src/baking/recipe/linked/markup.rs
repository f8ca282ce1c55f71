//! Markup cut into tags and text, once from front to back.
//!
//! Nothing here knows what a recipe is. A tag that never ends is text, so that nothing typed is lost.

/// A piece of markup.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Piece<'a> {
    /// Text between tags, its entities as written.
    Text(&'a str),
    /// A tag that opens an element.
    Open(Tag<'a>),
    /// The name of an element that closes.
    Close(&'a str),
    /// An element whose inside is no text of the page, with that inside.
    Raw(Tag<'a>, &'a str),
}

/// A tag that opens an element.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tag<'a> {
    /// Its name as written.
    pub name: &'a str,
    attributes: &'a str,
}

impl<'a> Tag<'a> {
    /// Whether the element has this name.
    pub fn is(&self, name: &str) -> bool {
        self.name.eq_ignore_ascii_case(name)
    }

    /// Whether it is a script that holds linked data.
    pub fn is_linked_data(&self) -> bool {
        self.is("script")
            && self.attributes().any(|(name, value)| {
                name.eq_ignore_ascii_case("type") && value.to_ascii_lowercase().contains("ld+json")
            })
    }

    /// Its attributes: names and values as written, the quotes taken off.
    pub fn attributes(&self) -> Attributes<'a> {
        Attributes(self.attributes)
    }
}

/// The attributes of a tag, in order.
pub struct Attributes<'a>(&'a str);

impl<'a> Iterator for Attributes<'a> {
    type Item = (&'a str, &'a str);

    fn next(&mut self) -> Option<Self::Item> {
        let text = self.0.trim_start_matches(|sign: char| {
            sign.is_ascii_whitespace() || sign == '/' || sign == '='
        });
        let end = text
            .find(|sign: char| sign.is_ascii_whitespace() || sign == '=')
            .unwrap_or(text.len());
        if end == 0 {
            return None;
        }
        let name = &text[..end];
        let rest = text[end..].trim_ascii_start();
        let Some(value) = rest.strip_prefix('=').map(str::trim_ascii_start) else {
            self.0 = rest;
            return Some((name, ""));
        };
        let (value, rest) = match value.strip_prefix(['"', '\'']) {
            Some(inside) => inside
                .split_once(|sign| value.starts_with(sign))
                .unwrap_or((inside, "")),
            None => value.split_at(
                value
                    .find(|sign: char| sign.is_ascii_whitespace())
                    .unwrap_or(value.len()),
            ),
        };
        self.0 = rest;
        Some((name, value))
    }
}

/// Elements whose inside is skipped as a whole: no text of the page, or none of its recipe.
const RAW: &[&str] = &[
    "iframe", "nav", "noscript", "script", "select", "style", "svg", "template", "textarea",
    "title",
];

/// The pieces of a source.
pub struct Pieces<'a> {
    text: &'a str,
    /// Where the last piece starts.
    pub start: usize,
    /// Where the next piece starts.
    pub at: usize,
    /// The end of the last tag there is.
    last: usize,
    /// Whether quotes in tags are passed over: one was never closed.
    is_plain: bool,
    /// What was looked for once and is not there any more: ends of the raw elements, then of a comment.
    missing: u32,
}

impl<'a> Pieces<'a> {
    /// Starts at the front of a source.
    pub fn of(text: &'a str) -> Self {
        Self {
            text,
            start: 0,
            at: 0,
            last: text.rfind('>').map_or(0, |at| at + 1),
            is_plain: false,
            missing: 0,
        }
    }

    /// The next piece; `None` at the end.
    pub fn next(&mut self) -> Option<Piece<'a>> {
        self.start = self.at;
        let mut from = self.at;
        while let Some(found) = self.text.get(from..)?.find('<') {
            let open = from + found;
            let Some(end) = self.end(open) else {
                from = open + 1;
                continue;
            };
            if open > self.start {
                self.at = open;
                return Some(Piece::Text(&self.text[self.start..open]));
            }
            self.at = end;
            if let Some(piece) = self.tag(open, end) {
                return Some(piece);
            }
            self.start = end;
            from = end;
        }
        self.at = self.text.len();
        (self.at > self.start).then(|| Piece::Text(&self.text[self.start..]))
    }

    /// Where the markup ends that starts here; `None` where a "<" is only a sign.
    fn end(&mut self, open: usize) -> Option<usize> {
        let rest = &self.text[open..];
        if rest.starts_with("<!--") {
            let end = self.seek(RAW.len(), "-->", open + 4)?;
            return Some(end + 3);
        }
        let bytes = rest.as_bytes();
        let letter = match bytes.get(1)? {
            b'/' => bytes.get(2)?,
            other => other,
        };
        if open >= self.last || !(letter.is_ascii_alphabetic() || matches!(bytes[1], b'!' | b'?')) {
            return None;
        }
        if !self.is_plain {
            // A quote counts after "=" only: "don't" in a tag opens nothing.
            let (mut quote, mut last) = (0, b' ');
            for (offset, byte) in bytes.iter().enumerate() {
                if quote != 0 {
                    if *byte == quote {
                        quote = 0;
                    }
                } else if *byte == b'>' {
                    return Some(open + offset + 1);
                } else if last == b'=' && matches!(byte, b'"' | b'\'') {
                    quote = *byte;
                }
                if !byte.is_ascii_whitespace() {
                    last = *byte;
                }
            }
            self.is_plain = true;
        }
        rest.find('>').map(|offset| open + offset + 1)
    }

    /// The tag between two places; `None` for a comment or a declaration.
    fn tag(&mut self, open: usize, end: usize) -> Option<Piece<'a>> {
        let inside = &self.text[open + 1..end - 1];
        let (inside, is_close) = match inside.strip_prefix('/') {
            Some(inside) => (inside, true),
            None => (inside, false),
        };
        let length = inside
            .find(|sign: char| !(sign.is_ascii_alphanumeric() || matches!(sign, '-' | ':')))
            .unwrap_or(inside.len());
        let (name, attributes) = inside.split_at(length);
        if name.is_empty() || inside.starts_with('-') {
            return None;
        }
        if is_close {
            return Some(Piece::Close(name));
        }
        let tag = Tag { name, attributes };
        if let Some(kind) = RAW.iter().position(|raw| tag.is(raw))
            && !attributes.ends_with('/')
        {
            if let Some(close) = self.seek_close(kind, end) {
                self.at = self.text[close..]
                    .find('>')
                    .map_or(self.text.len(), |offset| close + offset + 1);
                return Some(Piece::Raw(tag, &self.text[end..close]));
            }
            if tag.is("script") || tag.is("style") {
                self.at = self.text.len();
                return Some(Piece::Raw(tag, &self.text[end..]));
            }
        }
        Some(Piece::Open(tag))
    }

    /// Where a raw element closes.
    fn seek_close(&mut self, kind: usize, from: usize) -> Option<usize> {
        let name = RAW[kind];
        let mut from = from;
        while let Some(at) = self.seek(kind, "</", from) {
            let after = self.text.as_bytes().get(at + 2..at + 2 + name.len());
            if after.is_some_and(|after| after.eq_ignore_ascii_case(name.as_bytes())) {
                return Some(at);
            }
            from = at + 2;
        }
        self.missing |= 1 << kind;
        None
    }

    /// Where a mark stands next. What was missing once is not looked for again: that keeps the work linear.
    fn seek(&mut self, kind: usize, mark: &str, from: usize) -> Option<usize> {
        if self.missing & (1 << kind) != 0 {
            return None;
        }
        let found = self.text[from..].find(mark).map(|offset| from + offset);
        if found.is_none() {
            self.missing |= 1 << kind;
        }
        found
    }
}

/// Whether an element stands on lines of its own.
pub fn is_block(name: &str) -> bool {
    const BLOCKS: &[&str] = &[
        "address",
        "article",
        "aside",
        "blockquote",
        "body",
        "br",
        "caption",
        "center",
        "dd",
        "details",
        "dialog",
        "div",
        "dl",
        "dt",
        "fieldset",
        "figcaption",
        "figure",
        "footer",
        "form",
        "h1",
        "h2",
        "h3",
        "h4",
        "h5",
        "h6",
        "head",
        "header",
        "hr",
        "html",
        "legend",
        "li",
        "main",
        "menu",
        "ol",
        "option",
        "p",
        "pre",
        "section",
        "summary",
        "table",
        "tbody",
        "tfoot",
        "thead",
        "tr",
        "ul",
    ];
    BLOCKS.iter().any(|block| name.eq_ignore_ascii_case(block))
}

/// Whether an element never has an inside.
pub fn is_void(name: &str) -> bool {
    const VOID: &[&str] = &[
        "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr",
    ];
    VOID.iter().any(|void| name.eq_ignore_ascii_case(void))
}

/// Whether the end of an element is often left out.
pub fn is_open_ended(name: &str) -> bool {
    ["p", "li", "dd", "dt", "tr", "option"]
        .iter()
        .any(|open| name.eq_ignore_ascii_case(open))
}

/// Whether a text is a page's source or a piece of one, and no recipe with a tag here and there.
pub fn is_source(text: &str) -> bool {
    if !text.contains('<') {
        return false;
    }
    let is_framed = text.trim_ascii().starts_with('<') && text.trim_ascii().ends_with('>');
    let lines = text.lines().filter(|line| !line.trim().is_empty()).count();
    let mut blocks = 0;
    let mut pieces = Pieces::of(text);
    while let Some(piece) = pieces.next() {
        let (name, is_data) = match piece {
            Piece::Text(_) => continue,
            Piece::Open(tag) => (tag.name, false),
            Piece::Raw(tag, _) => (tag.name, tag.is_linked_data()),
            Piece::Close(name) => (name, false),
        };
        let is_frame = ["html", "head", "body"]
            .iter()
            .any(|frame| name.eq_ignore_ascii_case(frame));
        blocks += usize::from(is_block(name));
        // Lines are the reader's own: only where tags part them too is nothing lost by taking tags for breaks.
        if is_frame || is_data || blocks > 0 && (is_framed || blocks >= lines) {
            return true;
        }
    }
    false
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(text: &str) -> String {
        let mut out = String::new();
        let mut pieces = Pieces::of(text);
        while let Some(piece) = pieces.next() {
            match piece {
                Piece::Text(text) => out.push_str(text),
                Piece::Open(tag) => out.push_str(&format!("({})", tag.name)),
                Piece::Close(name) => out.push_str(&format!("(/{name})")),
                Piece::Raw(tag, inside) => out.push_str(&format!("({}:{inside})", tag.name)),
            }
        }
        out
    }

    #[test]
    fn markup_is_cut_at_its_tags() {
        for (text, expected) in [
            ("a<b>c</b>d", "a(b)c(/b)d"),
            ("I <3 this < that", "I <3 this < that"),
            ("<!-- <p> -->a<!doctype html>b", "ab"),
            ("<!-- never closed <p>a", "<!-- never closed (p)a"),
            ("<p title=\"a > b\">c", "(p)c"),
            ("<p title=\"never closed>c<b>d", "(p)c(b)d"),
            ("<p don't>c<p title=\"a > b\">d", "(p)c(p)d"),
            ("a<p", "a<p"),
            ("<SCRIPT>if (a<b) {}</Script >c", "(SCRIPT:if (a<b) {})c"),
            ("<script>a", "(script:a)"),
            ("<nav>a", "(nav)a"),
            ("<nav>a</nav>b", "(nav:a)b"),
            ("<br/>a<br />", "(br)a(br)"),
            ("</", "</"),
            ("<", "<"),
        ] {
            assert_eq!(shown(text), expected, "{text}");
        }
    }

    #[test]
    fn attributes_are_read_in_any_writing() {
        let text = "<p a=1 b='2 3' c = \"4>5\" d e=/x/ />";
        let Some(Piece::Open(tag)) = Pieces::of(text).next() else {
            panic!("no tag")
        };
        let pairs: Vec<_> = tag.attributes().collect();
        assert_eq!(
            pairs,
            [
                ("a", "1"),
                ("b", "2 3"),
                ("c", "4>5"),
                ("d", ""),
                ("e", "/x/")
            ]
        );
    }

    #[test]
    fn a_source_is_told_from_a_recipe_with_tags() {
        for (text, is_one) in [
            ("<ul><li>1 egg</li></ul>", true),
            ("2 cups flour<br>1 egg", true),
            ("x\ny\n<html>\nz", true),
            ("a\nb\n<script type='application/ld+json'>{}</script>", true),
            ("2 cups <b>flour</b>", false),
            ("<b>Cake</b>\n2 cups flour\n1 egg", false),
            ("Cake\n2 cups flour<br>1 egg\nsalt", false),
        ] {
            assert_eq!(is_source(text), is_one, "{text}");
        }
    }
}
