//! What was changed and can be taken back: earlier inputs, whole, in memory only.

use crate::baking::ingredient::own::Meaning;
use crate::baking::worksheet::Inputs;

/// How many steps are remembered.
const DEPTH: usize = 40;

/// The inputs before a change, and what the change was.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// In words, for the button: "Use 5.2 g soda".
    pub what: String,
    /// The inputs as they were.
    pub inputs: Inputs,
    /// True for changes that come letter by letter and are taken back together.
    pub typed: bool,
    /// Words that the change taught, or made forgotten.
    pub taught: Option<Taught>,
}

/// What words of the baker's meant before a change and after it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taught {
    /// The words.
    pub words: String,
    /// Before; `None` where they meant nothing of their own.
    pub before: Option<Meaning>,
    /// After.
    pub after: Option<Meaning>,
}

/// Steps taken, and steps taken back.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    past: Vec<Step>,
    ahead: Vec<Step>,
}

impl History {
    /// Remembers the inputs before a change. Letters typed in one go count as one step.
    pub fn remember(&mut self, step: Step) {
        self.ahead.clear();
        let continued = step.typed
            && self
                .past
                .last()
                .is_some_and(|last| last.typed && last.what == step.what);
        match self.past.last_mut().filter(|_| continued) {
            // What was taught first is taken back, and what was taught last put back.
            Some(last) => {
                if let (Some(first), Some(now)) = (&mut last.taught, step.taught) {
                    first.after = now.after;
                }
            }
            None => self.past.push(step),
        }
        if self.past.len() > DEPTH {
            self.past.remove(0);
        }
    }

    /// The last change, if there is one to take back.
    pub fn last(&self) -> Option<&Step> {
        self.past.last()
    }

    /// The change last taken back, if it can be put back.
    pub fn next(&self) -> Option<&Step> {
        self.ahead.last()
    }

    /// Takes the last change back: gives the inputs before it, and what its words meant.
    pub fn take_back(&mut self, now: Inputs) -> Option<Step> {
        let step = self.past.pop()?;
        self.ahead.push(Step {
            inputs: now,
            ..step.clone()
        });
        Some(step)
    }

    /// Puts the change last taken back in place again: gives the inputs after it, and what its words mean.
    pub fn put_back(&mut self, now: Inputs) -> Option<Step> {
        let step = self.ahead.pop()?;
        self.past.push(Step {
            inputs: now,
            ..step.clone()
        });
        Some(step)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn step(what: &str, text: &str, typed: bool) -> Step {
        Step {
            what: what.into(),
            inputs: Inputs::of_text(text),
            typed,
            taught: None,
        }
    }

    #[test]
    fn letters_are_taken_back_together_and_a_remedy_by_itself() {
        let mut history = History::default();
        history.remember(step("typing", "", true));
        history.remember(step("typing", "a", true));
        history.remember(step("remedy", "ab", false));
        let inputs = |step: Option<Step>| step.map(|step| step.inputs);
        let text = |text: &str| Some(Inputs::of_text(text));
        assert_eq!(
            inputs(history.take_back(Inputs::of_text("ab soda"))),
            text("ab")
        );
        assert_eq!(inputs(history.take_back(Inputs::of_text("ab"))), text(""));
        assert_eq!(history.take_back(Inputs::default()), None);
        assert_eq!(inputs(history.put_back(Inputs::of_text(""))), text("ab"));
        assert_eq!(
            inputs(history.put_back(Inputs::of_text("ab"))),
            text("ab soda")
        );
    }
}
