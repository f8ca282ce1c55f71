//! Pages and linked data to recipe text, against texts that were written by hand: beside each page in `pages/` stands
//! what is said of it, a blank line, and the text expected. All recipes and sites are invented.

use batterwright::baking::recipe::linked::text_of;
use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

#[test]
fn every_page_reads_as_written_by_hand() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/pages");
    let mut count = 0;
    for entry in fs::read_dir(folder).expect("the folder of pages") {
        let path = entry.expect("an entry of that folder").path();
        if path.extension().is_some_and(|ending| ending == "txt") {
            continue;
        }
        let source = fs::read_to_string(&path).expect("a page is text");
        let expected = fs::read_to_string(path.with_extension("txt")).expect("an expected text");
        let page = text_of(&source).unwrap_or_else(|| panic!("{} is no page", path.display()));
        let shown = format!("{}\n\n{}", page.said, page.text);
        assert_eq!(shown, expected, "{}", path.display());
        count += 1;
    }
    assert!(count >= 14, "only {count} pages");
}

/// What is written out is no page itself.
#[test]
fn the_text_of_a_page_is_ordinary_text() {
    let source = include_str!("pages/block.html");
    let page = text_of(source).expect("a page");
    assert_eq!(text_of(&page.text), None);
}

/// Cut off anywhere, or with a sign lost anywhere, a page still gives a text.
#[test]
fn a_damaged_page_is_never_lost() {
    for source in [
        include_str!("pages/block.html"),
        include_str!("pages/damaged.html"),
        include_str!("pages/microformat.html"),
        include_str!("pages/table.html"),
        include_str!("pages/two_parts.json"),
    ] {
        for (at, sign) in source.char_indices() {
            let cut = &source[..at];
            let lost = [cut, &source[at + sign.len_utf8()..]].concat();
            for text in [cut, lost.as_str()] {
                if let Some(page) = text_of(text) {
                    assert!(
                        !page.text.trim().is_empty() && page.said.ends_with('.'),
                        "{text}"
                    );
                }
            }
        }
    }
}

/// A bound far above what linear work needs and far below what quadratic work would take.
#[test]
fn a_large_page_takes_little_time() {
    const SIZE: usize = 1_000_000;
    for part in [
        "<p>2 cups flour &amp; 1 egg</p>\n",
        "<",
        "<a \"",
        "<a b=\"",
        "<!--",
        "<nav>",
        "</nav",
        "<script>",
        "<script></script ",
        "<li itemprop=recipeIngredient>a",
        "<div itemscope itemtype='/Recipe'><b itemprop=name>x",
        "<td>",
        "<p a=b c=d e f=g>",
        "&amp",
        " ",
        "\n<br>",
    ] {
        let source = ["<html>", &part.repeat(SIZE / part.len())].concat();
        let start = Instant::now();
        let page = text_of(&source);
        assert!(page.is_some(), "{part}");
        assert!(
            start.elapsed() < Duration::from_secs(10),
            "{part:?} took {:?}",
            start.elapsed()
        );
    }
    for part in ["\"a\",", "\"", ", ", "\\", "{\"a\":[", "\"\n"] {
        let source = ["{\"a\":[", &part.repeat(SIZE / part.len())].concat();
        let start = Instant::now();
        assert!(text_of(&source).is_some(), "{part}");
        assert!(
            start.elapsed() < Duration::from_secs(10),
            "{part:?} took {:?}",
            start.elapsed()
        );
    }
}
