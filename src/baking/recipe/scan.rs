//! Scanning: the tokens of a line to chunks: amounts, runs of words, brackets and breaks.

use super::term::{self, Place, Term};
use super::token::{Kind, Token};

/// A part of a line.
#[derive(Clone, Debug, PartialEq)]
pub enum Chunk {
    /// An amount, and the word that leads to it.
    Amount(Term, Lead),
    /// Words, from one token to before another.
    Words(usize, usize),
    /// What stands in brackets.
    Bracket(Vec<Chunk>),
    /// A comma, colon, dash, column or full stop.
    Break(char),
}

/// What joins an amount to what is before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lead {
    /// Nothing, or a slash or comma.
    None,
    /// "Plus", "and", "+".
    Plus,
    /// "Less", "minus".
    Minus,
    /// "Or".
    Or,
    /// "To": the upper end of a range.
    To,
    /// "With", "in", "from", "of".
    Other,
}

/// The chunks of a line.
pub fn scan(tokens: &[Token]) -> Vec<Chunk> {
    part(tokens, 0, tokens.len(), false)
}

/// The chunks between two tokens; brackets within brackets are taken for breaks.
fn part(all: &[Token], from: usize, to: usize, is_nested: bool) -> Vec<Chunk> {
    let tokens = &all[..to];
    let mut chunks = Vec::new();
    let mut run: Option<usize> = None;
    let mut has_words = false;
    let mut has_amount = false;
    let mut at = from;
    while at < to {
        let token = &tokens[at];
        if let Some((term, lead, run_end)) = amount(tokens, at, run, has_words, has_amount) {
            if let Some(start) = run.take()
                && run_end > start
            {
                chunks.push(Chunk::Words(start, run_end));
            }
            at = term.next.max(at + 1);
            if tokens.get(at).is_some_and(|token| token.is("of")) {
                at += 1;
            }
            has_amount = true;
            chunks.push(Chunk::Amount(term, lead));
            continue;
        }
        let mut close = |chunks: &mut Vec<Chunk>, end: usize| {
            if let Some(start) = run.take() {
                chunks.push(Chunk::Words(start, end));
            }
        };
        match token.kind {
            Kind::Mark(open @ ('(' | '[' | '{')) => {
                close(&mut chunks, at);
                if is_nested {
                    chunks.push(Chunk::Break(','));
                    at += 1;
                    continue;
                }
                let end = closing(tokens, at);
                // "[1]" points to a footnote.
                let is_footnote =
                    open == '[' && end == at + 2 && matches!(tokens[at + 1].kind, Kind::Integer(_));
                if !is_footnote {
                    chunks.push(Chunk::Bracket(part(all, at + 1, end, true)));
                }
                at = end + 1;
                continue;
            }
            Kind::Mark(')' | ']' | '}') => {
                close(&mut chunks, at);
                chunks.push(Chunk::Break(','));
            }
            Kind::Mark(mark @ (',' | ';' | ':' | '|' | '.' | '!' | '?' | '=' | '•')) => {
                close(&mut chunks, at);
                if chunks.last() != Some(&Chunk::Break(mark)) {
                    chunks.push(Chunk::Break(mark));
                }
            }
            Kind::Mark('-')
                if token.spaced && tokens.get(at + 1).is_none_or(|next| next.spaced) =>
            {
                close(&mut chunks, at);
                chunks.push(Chunk::Break('-'));
            }
            Kind::Mark('/' | '&' | '+' | '-') => {}
            Kind::Mark(_) => {}
            _ => {
                has_words = true;
                if run.is_none() {
                    run = Some(at);
                }
            }
        }
        at += 1;
    }
    if let Some(start) = run {
        chunks.push(Chunk::Words(start, to));
    }
    chunks
}

/// Where the bracket that opens here is closed, or the end.
fn closing(tokens: &[Token], open: usize) -> usize {
    let mut depth = 0_usize;
    for (at, token) in tokens.iter().enumerate().skip(open) {
        match token.kind {
            Kind::Mark('(' | '[' | '{') => depth += 1,
            Kind::Mark(')' | ']' | '}') => {
                depth = depth.saturating_sub(1);
                if depth == 0 {
                    return at;
                }
            }
            _ => {}
        }
    }
    tokens.len()
}

/// The amount that starts at a token, the word that leads to it, and where the words before it end.
fn amount(
    tokens: &[Token],
    at: usize,
    run: Option<usize>,
    has_words: bool,
    has_amount: bool,
) -> Option<(Term, Lead, usize)> {
    let token = &tokens[at];
    let is_minus = token.is_mark('-')
        && token.spaced
        && tokens
            .get(at + 1)
            .is_some_and(|next| next.is_number() && !next.spaced);
    let may_start = token.is_number() || token.kind == Kind::Word || token.is_mark('~') || is_minus;
    if !may_start {
        return None;
    }
    // "All-purpose" and "2-ingredient": a word behind a dash starts nothing.
    let previous = at.checked_sub(1).map(|before| &tokens[before]);
    if previous.is_some_and(|before| before.is_mark('-') && !token.spaced) && run.is_some() {
        return None;
    }
    let (lead, run_end) = lead(tokens, at, run);
    let place = match lead {
        Lead::Plus | Lead::Minus | Lead::Or => Place::Joined,
        Lead::Other if previous.is_some_and(|before| before.is("from")) => Place::Joined,
        Lead::Other
            if previous.is_some_and(|before| before.is("of"))
                && run.is_some_and(|start| names_a_part(&tokens[start..at])) =>
        {
            Place::Joined
        }
        _ if has_words || has_amount => Place::AfterName,
        _ => Place::Start,
    };
    let mut term = term::term(tokens, at, place)?;
    term.at = at;
    // "Or a nut oil", "and a pinch": an article alone is no amount in the middle of a line.
    if place == Place::Joined && term.is_bare && token.is_any(&["a", "an"]) && lead != Lead::Other {
        return None;
    }
    // "Eggs x 3" and "eggs x3".
    let mut run_end = run_end;
    if let (Some(before), Some(start)) = (previous, run)
        && before.is("x")
        && run_end == at
        && run_end > start
    {
        run_end -= 1;
        term.is_bare = false;
    }
    Some((term, lead, run_end))
}

/// Whether the words name a part of a fruit or egg: "juice of", "whites of".
fn names_a_part(words: &[Token]) -> bool {
    words.iter().any(|word| {
        word.is_any(&[
            "juice", "zest", "rind", "peel", "white", "whites", "yolk", "yolks", "seeds", "pulp",
            "flesh",
        ])
    })
}

/// The word before an amount that joins it on, and where the words before that end.
fn lead(tokens: &[Token], at: usize, run: Option<usize>) -> (Lead, usize) {
    let from = run.unwrap_or(at.saturating_sub(1));
    let mut end = at;
    let mut lead = Lead::None;
    while end > from {
        let token = &tokens[end - 1];
        let joint = match token.kind {
            Kind::Mark('+' | '&') => Lead::Plus,
            Kind::Mark('/' | '-' | '=') => lead,
            Kind::Word => match token.lower {
                "plus" | "and" => Lead::Plus,
                "minus" | "less" => Lead::Minus,
                "or" => Lead::Or,
                "to" => Lead::To,
                "with" | "in" | "from" | "of" | "using" => Lead::Other,
                "about" | "approx" | "approximately" | "around" | "roughly" => lead,
                _ => break,
            },
            _ => break,
        };
        lead = joint;
        end -= 1;
    }
    (lead, end)
}
