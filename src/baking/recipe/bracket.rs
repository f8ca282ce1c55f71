//! Brackets in a line: another amount of the same, a note, the line's own choice, or words that belong to the name.

use super::gather::{Gather, Other, shares_text, shares_word, strip_or};
use super::scan::{Chunk, Lead};
use super::term::Term;
use super::token::Token;
use super::{Amount, Unit, phrase, understood};
use crate::baking::ingredient::{Larder, Piece, lookup};

impl Gather {
    /// A bracket: another amount, a note, or words that belong to the name.
    pub(super) fn bracket(
        &mut self,
        tokens: &[Token],
        line: &str,
        inner: &[Chunk],
        larder: Larder<'_>,
    ) {
        let text = |from: usize, to: usize| {
            line.get(tokens[from].start..tokens[to - 1].end)
                .unwrap_or_default()
        };
        // "(2 tbsp ground flax + 5 tbsp water)" tells what it is made of.
        let mut is_alternative = inner.windows(2).any(|pair| match pair {
            [
                Chunk::Amount(_, Lead::Plus | Lead::Minus),
                Chunk::Words(from, to),
            ] => {
                let words = text(*from, *to);
                !lookup::only_describes(words) && self.names_another(words, larder)
            }
            _ => false,
        });
        let opened_at = self.amounts.len();
        let was_over = self.is_over;
        for (at, chunk) in inner.iter().enumerate() {
            match chunk {
                Chunk::Words(from, to) => {
                    let words = text(*from, *to);
                    let lower = words.to_ascii_lowercase();
                    if at == 0 && opens_alternative(&lower) {
                        is_alternative = true;
                    }
                    // Of an alternative only what concerns the whole line is kept: "or leave out (optional)".
                    let is_note =
                        phrase::aside(&lower, false).is_some() || phrase::is_to_taste(&lower);
                    let is_set_apart = std::mem::take(&mut self.is_set_apart);
                    if !is_set_apart && (!is_alternative || is_note) {
                        self.brackets.push(words.to_owned());
                    }
                }
                Chunk::Amount(term, lead) => {
                    let after = match inner.get(at + 1) {
                        Some(Chunk::Words(from, to)) => text(*from, *to),
                        _ => "",
                    };
                    let after_lower = after.to_ascii_lowercase();
                    // "(I use 11 g)" gives this ingredient's own weight.
                    let is_own_weight = after.is_empty()
                        && self.instead.is_empty()
                        && inner.len() <= 2
                        && matches!(inner.first(), Some(Chunk::Words(from, to)) if text(*from, *to).eq_ignore_ascii_case("i use"))
                        && term
                            .amounts
                            .iter()
                            .all(|amount| matches!(amount.unit, Unit::Mass(_)));
                    if is_own_weight && !self.is_over {
                        self.dual(term, larder);
                        return;
                    }
                    if self.is_over
                        || after_lower.starts_with("if ")
                        || is_alternative
                        || *lead == Lead::Or
                            && (at == 0 || !matches!(inner[at - 1], Chunk::Amount(..)))
                    {
                        is_alternative = true;
                        continue;
                    }
                    // "(3/4 cup for the batter, 1/4 cup for the top)", "(plus 1/4 cup for kneading)".
                    let opens_with_sum = at == 0 && matches!(lead, Lead::Plus | Lead::Minus);
                    if opens_with_sum
                        && *lead == Lead::Plus
                        && !after_lower.contains("for ")
                        && self.names_another(after, larder)
                        && let Some(rest) = inner_text(tokens, line, inner, at)
                    {
                        // "1 cup soy milk (plus 1 tbsp vinegar)".
                        self.others.push(Other {
                            text: rest.to_owned(),
                            said: rest.to_owned(),
                        });
                        return;
                    }
                    if opens_with_sum || after_lower.starts_with("for ") && !self.amounts.is_empty()
                    {
                        self.is_set_apart = !after.is_empty();
                        continue;
                    }
                    self.bracket_amount(term, *lead, after, opened_at, larder);
                }
                Chunk::Bracket(_) | Chunk::Break(_) => {}
            }
        }
        if !was_over
            && self.instead.is_empty()
            && is_alternative
            && let Some(words) = inner_text(tokens, line, inner, 0)
            && let Some(other) = strip_or(words)
        {
            self.instead.push(other.to_owned());
        }
    }

    /// An amount in a bracket.
    fn bracket_amount(
        &mut self,
        term: &Term,
        lead: Lead,
        after: &str,
        opened_at: usize,
        larder: Larder<'_>,
    ) {
        let after_lower = &after.to_ascii_lowercase();
        if term.fault.is_some() {
            self.fault = self.fault.take().or_else(|| term.fault.clone());
            return;
        }
        if self.amounts.is_empty() {
            self.take(term);
            return;
        }
        if matches!(lead, Lead::Plus | Lead::Minus) {
            if after.is_empty() || !self.names_another(after, larder) {
                // The sum belongs to what this bracket has said, not to the amounts before it.
                let mut before = std::mem::take(&mut self.amounts);
                self.amounts = before.split_off(opened_at.min(before.len()));
                self.sum(
                    term,
                    if lead == Lead::Plus { 1.0 } else { -1.0 },
                    after,
                    larder,
                );
                before.append(&mut self.amounts);
                self.amounts = before;
            }
            return;
        }
        let is_each = after_lower.starts_with("each")
            || after_lower.starts_with("apiece")
            || after_lower.contains(" each")
            || after_lower.starts_with("per ");
        let first = self.amounts[0];
        if is_each {
            self.amounts.extend(term.amounts.iter().map(|each| Amount {
                low: each.low * first.low,
                high: each.high * first.high,
                unit: each.unit,
            }));
            return;
        }
        if !after.is_empty() && self.names_another_family(after, larder) {
            let amount = term.amounts.first().map(understood::written);
            self.others.push(Other {
                text: String::new(),
                said: format!("{} {after}", amount.unwrap_or_default()),
            });
            return;
        }
        let holds = matches!(
            first.unit,
            Unit::Piece(Piece::Can | Piece::Packet | Piece::Pot)
        );
        let weighs = term
            .amounts
            .iter()
            .any(|amount| matches!(amount.unit, Unit::Mass(_) | Unit::Volume(_)));
        if holds
            && weighs
            && first.high > 1.0
            && !after_lower.contains("total")
            && self.amounts.len() == 1
        {
            // What is printed on a packet is the weight of one packet.
            let each = term
                .amounts
                .first()
                .map(understood::written)
                .unwrap_or_default();
            self.doubts.push(format!("{each} is taken as the weight of each. Write \"total\" beside it if it is the weight of all."));
            self.amounts.extend(term.amounts.iter().map(|each| Amount {
                low: each.low * first.low,
                high: each.high * first.high,
                unit: each.unit,
            }));
            return;
        }
        if let Some(form) = after_lower
            .split(|letter: char| !letter.is_alphanumeric())
            .find_map(phrase::form)
            && term
                .amounts
                .iter()
                .any(|amount| matches!(amount.unit, Unit::Volume(_)))
        {
            self.bracket_form = Some(form);
        }
        // "(about 3 medium)" counts pieces where the line has a measure.
        let counts_again = term.is_bare && matches!(first.unit, Unit::Piece(Piece::Each));
        if !counts_again {
            self.dual(term, larder);
            self.size = self
                .size
                .or(phrase::size(after_lower).filter(|_| term.is_bare));
        }
    }

    /// Whether words in a bracket name something that cannot be this line's own ingredient.
    fn names_another_family(&self, words: &str, larder: Larder<'_>) -> bool {
        let found = lookup::search(words, larder);
        let (Some(other), false) = (found.matched.taken(), lookup::only_describes(words)) else {
            return false;
        };
        let own = lookup::search(&self.name, larder);
        match own.matched.taken() {
            // "1 cup mashed banana (3 bananas)", "1/4 cup lemon juice (2 lemons)".
            Some(own) => {
                own.key != other.key && !shares_word(own, other) && !shares_text(&self.name, words)
            }
            None => false,
        }
    }
}

/// The text of a bracket from one of its chunks on.
fn inner_text<'l>(
    tokens: &[Token],
    line: &'l str,
    inner: &[Chunk],
    from: usize,
) -> Option<&'l str> {
    let ends = |chunk: &Chunk| match chunk {
        Chunk::Words(from, to) => Some((*from, *to)),
        Chunk::Amount(term, _) => Some((term.at, term.next)),
        Chunk::Bracket(_) | Chunk::Break(_) => None,
    };
    let first = ends(inner.get(from)?)?.0;
    let last = inner[from..].iter().rev().find_map(ends)?.1;
    // "Or" before an amount is no chunk of its own.
    let first = match first.checked_sub(1) {
        Some(before) if tokens[before].is("or") => before,
        _ => first,
    };
    line.get(tokens[first].start..tokens[last - 1].end)
}

/// Whether a bracket opens with words that make its amounts somebody else's.
pub fn opens_alternative(lower: &str) -> bool {
    [
        "or ",
        "use ",
        "see ",
        "i use",
        "you can",
        "can ",
        "substitute",
        "sub ",
        "if ",
        "note",
        "plus",
        "not ",
        "such as",
        "like ",
        "e.g",
        "eg ",
        "i.e",
        "reserve",
        "swap",
        "made ",
        "make ",
        "equivalent",
    ]
    .iter()
    .any(|start| lower.starts_with(start))
        || lower == "or"
}
