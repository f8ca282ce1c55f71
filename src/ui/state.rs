//! The state of the page: inputs as signals, the worksheet as one memo of them.
//!
//! Every change to the inputs goes through [`Bench::take`], which keeps it on this device as soon as
//! the page shows it; leaving the page keeps it first, so that a reload at any moment loses nothing.

use super::early::Early;
use super::history::{History, Step, Taught};
use super::shown::{Part, Shown};
use super::{device, storage};
use crate::baking::finding::Remedy;
use crate::baking::ingredient::Own;
use crate::baking::ingredient::own::{Meaning, OwnRecord};
use crate::baking::recipe::linked;
use crate::baking::saved::{VersionOf, first_words};
use crate::baking::worksheet::{
    Choices, Inputs, LeaveningPlan, LinePart, Looks, MixingSheet, Settings, Worksheet,
    leavening_plan, mixing_sheet, worksheet, worksheet_again,
};
use leptos::{leptos_dom::helpers::TimeoutHandle, prelude::*};
use std::sync::Arc;
use std::time::Duration;

mod bakes;
mod carrying;
mod comparing;
mod keeping;
mod opening;
mod oven_told;
mod pans;
mod swaps;
mod taught;
mod trials;
mod trials_kept;
mod versions;
mod weighing;

pub use bakes::Bakes;
pub use carrying::Came;
pub use keeping::{Clash, Keeping, Promise};
pub use pans::PanPlace;
use trials::Notebook;
pub use versions::{Compared, Original};
use weighing::Kitchen;

/// Texts longer than this, in bytes, are reckoned after a pause in typing instead of at each letter.
const LONG_TEXT: usize = 20_000;
/// That pause.
const PAUSE: Duration = Duration::from_millis(150);
/// After this long a frame that has not come is not waited for.
const NO_FRAME: Duration = Duration::from_millis(250);
/// The step of the history that typing in the text box makes.
const TYPING: &str = "what was typed";

/// What is open: a recipe of the baker's own, or a demo that nobody has changed yet.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Open {
    id: String,
    /// False until the first change, so that a demo that was only looked at is not kept.
    own: bool,
}

/// Everything that the parts of the page share.
#[derive(Clone, Copy)]
pub struct Bench {
    /// The open recipe's inputs.
    inputs: RwSignal<Inputs>,
    /// What holds for every recipe.
    settings: RwSignal<Settings>,
    /// The baker's own ingredients and words.
    own: RwSignal<OwnRecord>,
    /// The same as the flow takes them; made anew only when they change.
    larder: Memo<Arc<Own>>,
    open: StoredValue<Open>,
    /// What was seen of the text's lines, so that a letter looks at its own line alone.
    looks: StoredValue<Looks>,
    /// Counts changes of what was chosen beside the text.
    chosen: RwSignal<u32>,
    /// What the open recipe is a version of.
    version: RwSignal<Option<VersionOf>>,
    history: RwSignal<History>,
    /// Counts changes of the inputs that the worksheet is to follow.
    pace: RwSignal<u32>,
    waiting: StoredValue<Option<TimeoutHandle>>,
    shown: Memo<Shown>,
    parts: [Memo<u32>; Part::ALL.len()],
    /// Counts changes of the text that did not come from the text box.
    pub outside: RwSignal<u32>,
    /// The row of the worksheet's lines whose details are open.
    pub row: RwSignal<Option<usize>>,
    /// The ingredient that something else is sought for.
    pub instead: RwSignal<Option<LinePart>>,
    /// Whether the part where something else is chosen is open.
    pub instead_open: RwSignal<bool>,
    /// Why the open recipe is not being kept, if it is not.
    pub unkept: RwSignal<Option<String>>,
    /// Why the settings are not being kept, if they are not.
    pub settings_unkept: RwSignal<Option<String>>,
    /// Why the own ingredients are not being kept, if they are not.
    pub own_unkept: RwSignal<Option<String>>,
    /// What had to be set aside when the page opened.
    pub aside: RwSignal<Option<String>>,
    /// What else is to be said about keeping.
    pub keeping: Keeping,
    /// What came by an address, while there is something to say of it.
    pub came: RwSignal<Option<Came>>,
    /// A remedy or correction that was just carried out and can be taken back.
    pub done: RwSignal<Option<String>>,
    /// Whether the text box is open on a small screen.
    pub editing: RwSignal<bool>,
    /// What is looked up in the larder.
    pub asked: RwSignal<String>,
    /// The bake times, as far as they are worked out.
    pub bakes: RwSignal<Bakes>,
    /// Whether new ones are being worked out.
    pub baking: RwSignal<bool>,
    /// What is under way at the bench.
    kitchen: Kitchen,
    /// Bakes that were written down.
    notebook: Notebook,
    /// True from a change of the inputs until what is in sight shows it: the rest of the page is drawn after that.
    pub haste: RwSignal<bool>,
}

impl Bench {
    /// Opens what was open when the page was last used; on a first visit, the first demo.
    /// Text that was typed before the module arrived becomes a recipe of its own.
    pub fn start(early: &Early) -> Self {
        let inputs = RwSignal::new(Inputs::default());
        let settings = RwSignal::new(storage::load::<Settings>());
        let pace = RwSignal::new(0);
        let looks = StoredValue::new(Looks::default());
        let own = RwSignal::new(storage::load::<OwnRecord>());
        // Made anew only when the baker's larder changes, since what was read before holds for one state of it.
        let larder =
            Memo::new_with_compare(move |_| own.with(|own| Arc::new(Own::of(own))), |_, _| true);
        let reckon = move |before: Option<&Shown>| {
            pace.track();
            let settings = settings.get();
            let larder = larder.get();
            let sheet = inputs.with_untracked(|inputs| {
                looks.try_update_value(|looks| worksheet_again(looks, inputs, &settings, &larder))
            });
            // What was seen before is a help that may be gone; the worksheet is not.
            let sheet = sheet
                .unwrap_or_else(|| inputs.with_untracked(|inputs| worksheet(inputs, &settings)));
            Shown::after(before, sheet)
        };
        // Whether a worksheet differs is told by the counts, part by part.
        let shown = Memo::new_with_compare(reckon, |_, _| true);
        let bench = Self {
            inputs,
            settings,
            own,
            larder,
            pace,
            shown,
            parts: Part::ALL.map(|part| Memo::new(move |_| shown.with(|shown| shown.part(part)))),
            open: StoredValue::new(Open {
                id: device::fresh_id(),
                own: false,
            }),
            looks,
            chosen: RwSignal::new(0),
            version: RwSignal::new(None),
            history: RwSignal::new(History::default()),
            waiting: StoredValue::new(None),
            outside: RwSignal::new(0),
            row: RwSignal::new(None),
            instead: RwSignal::new(None),
            instead_open: RwSignal::new(false),
            unkept: RwSignal::new(None),
            settings_unkept: RwSignal::new(None),
            own_unkept: RwSignal::new(None),
            aside: RwSignal::new(None),
            keeping: Keeping::new(),
            came: RwSignal::new(None),
            done: RwSignal::new(None),
            editing: RwSignal::new(early.cursor.is_some()),
            asked: RwSignal::new(String::new()),
            bakes: RwSignal::new(Bakes::default()),
            baking: RwSignal::new(false),
            kitchen: Kitchen::start(),
            notebook: Notebook::start(),
            haste: RwSignal::new(false),
        };
        bench.follow_oven();
        bench.read_trials_ahead();
        bench.follow_clock();
        if early.text.trim().is_empty() {
            bench.open_last();
        } else {
            bench.take(Inputs::of_text(early.text.clone()));
        }
        let aside = [
            (
                storage::trouble::<Settings>(),
                "Your settings were set aside.",
                "The usual ones hold until you set them again; the old ones are untouched: find them on the shelf.",
            ),
            (
                storage::trouble::<OwnRecord>(),
                "Your own ingredients and words were set aside.",
                "The larder goes on without them; they are untouched: find them on the shelf.",
            ),
        ];
        for (trouble, what, then) in aside {
            let Some(trouble) = trouble else { continue };
            bench.aside.update(|aside| {
                let before = aside.take().map_or(String::new(), |words| words + " ");
                *aside = Some(format!("{before}{what} {trouble} {then}"));
            });
        }
        bench
    }

    /// A piece of the worksheet, following one part of it.
    pub fn part<R>(self, part: Part, read: impl FnOnce(&Worksheet) -> R) -> R {
        // Read, not only tracked: a memo that was never read listens to nothing.
        self.parts[part as usize].get();
        self.sheet(read)
    }

    /// A piece of the worksheet as it is now.
    pub fn sheet<R>(self, read: impl FnOnce(&Worksheet) -> R) -> R {
        self.shown.with_untracked(|shown| read(&shown.sheet))
    }

    /// A count that moves on when a row of the worksheet's lines has changed.
    pub fn row_changes(self, row: usize) -> Memo<u32> {
        let shown = self.shown;
        Memo::new(move |_| shown.with(|shown| shown.row(row)))
    }

    /// The line and the place in it that a row stands for.
    pub fn place(self, row: usize) -> LinePart {
        let place = self.sheet(|sheet| sheet.lines.get(row).map(|line| (line.line, line.part)));
        place.unwrap_or_default()
    }

    /// Opens the details of a line's first ingredient.
    pub fn open_line(self, line: usize) {
        let row = self.sheet(|sheet| sheet.lines.iter().position(|it| it.line == line));
        self.row.set(row);
    }

    /// The open recipe's inputs, followed.
    pub fn inputs<R>(self, read: impl FnOnce(&Inputs) -> R) -> R {
        self.inputs.with(read)
    }

    /// What was chosen beside the text, followed: a letter in the text is no change of it.
    pub fn chosen<R>(self, read: impl FnOnce(&Choices) -> R) -> R {
        self.chosen.track();
        self.inputs.with_untracked(|inputs| read(&inputs.choices))
    }

    /// The open recipe's inputs as they are now.
    pub fn inputs_now<R>(self, read: impl FnOnce(&Inputs) -> R) -> R {
        self.inputs.with_untracked(read)
    }

    /// The settings, followed.
    pub fn settings(self) -> Settings {
        self.settings.get()
    }

    /// The settings as they are now.
    pub fn settings_now(self) -> Settings {
        self.settings.get_untracked()
    }

    /// What the last change was, if it can be taken back; followed.
    pub fn last_change(self) -> Option<String> {
        self.history
            .with(|history| history.last().map(|step| step.what.clone()))
    }

    /// What the change last taken back was, if it can be put back; followed.
    pub fn next_change(self) -> Option<String> {
        self.history
            .with(|history| history.next().map(|step| step.what.clone()))
    }

    /// The name of the open recipe's record.
    pub fn open_id(self) -> String {
        self.open.with_value(|open| open.id.clone())
    }

    /// The text box's text has changed under the baker's hands.
    pub fn type_text(self, text: String) {
        let before = self.inputs.get_untracked();
        self.remember(TYPING.into(), before.clone(), true, None);
        self.done.set(None);
        self.editing.set(true);
        let typed = Inputs { text, ..before };
        match linked::text_of(&typed.text) {
            Some(page) if page.text != typed.text => self.take_page(typed, page),
            _ => self.take(typed),
        }
    }

    /// The text of a file that was opened goes in the place of the recipe.
    pub fn open_text(self, name: &str, text: String) {
        self.change(
            format!("the recipe is what {name} holds"),
            false,
            |inputs| {
                *inputs = Inputs::of_text(text);
            },
        );
        let opened = self.inputs.get_untracked();
        if let Some(page) = linked::text_of(&opened.text).filter(|page| page.text != opened.text) {
            self.take_page(opened, page);
        }
    }

    /// Puts the recipe that a page's source holds in its place; taking that back shows the source again.
    fn take_page(self, source: Inputs, page: linked::Page) {
        let after = Inputs {
            text: page.text,
            ..source.clone()
        };
        self.remember(page.said.clone(), source, false, None);
        self.done.set(Some(page.said));
        self.take(after);
        self.outside.update(|count| *count += 1);
    }

    /// Changes the inputs together with what was taught.
    fn change_taught(
        self,
        what: String,
        typed: bool,
        taught: Option<Taught>,
        change: impl FnOnce(&mut Inputs),
    ) {
        let before = self.inputs.get_untracked();
        let mut after = before.clone();
        change(&mut after);
        self.remember(what.clone(), before, typed, taught);
        self.done.set((!typed).then_some(what));
        self.take(after);
    }

    /// Changes the inputs by something other than the text box. `typed` joins changes that come letter by letter.
    pub fn change(self, what: String, typed: bool, change: impl FnOnce(&mut Inputs)) {
        let before = self.inputs.get_untracked();
        let mut after = before.clone();
        change(&mut after);
        self.change_to(what, typed, before, after);
    }

    fn change_to(self, what: String, typed: bool, before: Inputs, after: Inputs) {
        if after == before {
            return;
        }
        let text_changed = after.text != before.text;
        self.remember(what.clone(), before, typed, None);
        // What is typed can be typed back; a bar that comes up at each letter would be in the way.
        self.done.set((!typed).then_some(what));
        self.take(after);
        if text_changed {
            self.outside.update(|count| *count += 1);
        }
    }

    /// Carries a remedy out.
    pub fn apply(self, remedy: &Remedy) {
        let before = self.inputs.get_untracked();
        let after = before.with_remedy(remedy);
        self.change_to(remedy.label.clone(), false, before, after);
    }

    /// Takes the last change back.
    pub fn take_back(self) {
        self.step(History::take_back, |taught| taught.before);
    }

    /// Puts the change last taken back in place again.
    pub fn put_back(self) {
        self.step(History::put_back, |taught| taught.after);
    }

    fn step(
        self,
        step: impl FnOnce(&mut History, Inputs) -> Option<Step>,
        meaning: impl FnOnce(Taught) -> Option<Meaning>,
    ) {
        let now = self.inputs.get_untracked();
        if let Some(Step { inputs, taught, .. }) = self
            .history
            .try_update(|history| step(history, now))
            .flatten()
        {
            self.done.set(None);
            if let Some(taught) = taught {
                let words = taught.words.clone();
                let is_amount = [&taught.before, &taught.after]
                    .into_iter()
                    .any(|meaning| matches!(meaning, Some(Meaning::Amount(_))));
                self.teach(words, is_amount, meaning(taught));
            }
            self.take(inputs);
            self.outside.update(|count| *count += 1);
        }
    }

    /// The leavening that the open recipe's wish comes to, as things are now.
    pub fn leavening_plan(self) -> Result<LeaveningPlan, String> {
        let own = self.larder.get_untracked();
        self.inputs_now(|inputs| leavening_plan(inputs, &self.settings_now(), &own))
    }

    /// How warm the open recipe's batter is, as things are now.
    pub fn mixing(self) -> MixingSheet {
        let own = self.larder.get_untracked();
        self.inputs_now(|inputs| mixing_sheet(inputs, &self.settings_now(), &own))
    }

    /// A piece of the baker's own ingredients and words, followed.
    pub fn own<R>(self, read: impl FnOnce(&OwnRecord) -> R) -> R {
        self.own.with(read)
    }

    /// A piece of the baker's own ingredients and words as it is now.
    pub fn own_now<R>(self, read: impl FnOnce(&OwnRecord) -> R) -> R {
        self.own.with_untracked(read)
    }

    /// Keeps, and reckons if that is waiting too, what came in last.
    pub fn flush(self) {
        if self.wait_no_more() {
            self.keep();
            if self.inputs.with_untracked(is_long) {
                self.reckon();
            }
        }
    }

    fn remember(self, what: String, inputs: Inputs, typed: bool, taught: Option<Taught>) {
        self.history.update(|history| {
            history.remember(Step {
                what,
                inputs,
                typed,
                taught,
            })
        });
    }

    /// The one way in: new inputs, the worksheet after them, and right behind it the record on this device; whoever
    /// leaves the page before that flushes it.
    fn take(self, inputs: Inputs) {
        self.settle_came();
        let long = is_long(&inputs);
        let (chosen, swaps_alone) = self.inputs.with_untracked(|before| {
            let chosen = before.choices != inputs.choices;
            (
                chosen,
                chosen && before.without_swaps() == inputs.without_swaps(),
            )
        });
        self.inputs.set(inputs);
        if chosen {
            self.chosen.update(|count| *count = count.wrapping_add(1));
        }
        self.wait_no_more();
        let pause = if long { PAUSE } else { Duration::ZERO };
        match set_timeout_with_handle(move || self.flush(), pause) {
            Ok(later) => self.waiting.set_value(Some(later)),
            Err(_) => self.keep(),
        }
        // What is to be swapped shows in the plan alone.
        if !long && !swaps_alone {
            self.hasten();
            self.reckon();
        }
    }

    /// Has what is out of sight wait until the next frame is on the screen.
    fn hasten(self) {
        // Nothing that follows it needs to hear of its beginning.
        self.haste.update_untracked(|haste| *haste = true);
        let calm = move || {
            // The page may be gone by then.
            let _ = self.haste.try_set(false);
        };
        device::after_frame(calm);
        // A page that is not shown has no frames.
        set_timeout(calm, NO_FRAME);
    }

    fn wait_no_more(self) -> bool {
        let waiting = self.waiting.try_update_value(Option::take).flatten();
        if let Some(handle) = waiting {
            handle.clear();
        }
        waiting.is_some()
    }

    /// Keeps a demo that nobody has changed yet, as a recipe of the baker's own.
    fn keep_open(self) {
        if !self.open.with_value(|open| open.own) {
            self.keep();
        }
    }

    fn reckon(self) {
        self.pace.update(|pace| *pace = pace.wrapping_add(1));
    }
}

/// What a recipe is called where there is room for one line.
fn title_of(inputs: &Inputs) -> String {
    first_words(&inputs.text)
}

/// Whether a text is so long that its worksheet waits for a pause in typing.
fn is_long(inputs: &Inputs) -> bool {
    inputs.text.len() > LONG_TEXT
}
