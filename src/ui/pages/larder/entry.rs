//! The form of an own ingredient. Whatever is typed holds and is kept at once; what is wrong stands at its field.

use super::card::groups;
use super::{back, title};
use crate::baking::ingredient::card::card;
use crate::baking::ingredient::find::find;
use crate::baking::ingredient::own::{LabelStyle, OwnEntry, OwnField, Weighing};
use crate::baking::ingredient::{Allergen, Filling, Form, Region, SpoonOrCup};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{button, paragraph, select, text_field};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many ingredients that it may be like are offered at once.
const OFFERS: usize = 6;

/// More measures than anybody weighs of one thing.
const MOST_WEIGHINGS: usize = 6;

const STYLES: [(LabelStyle, &str); 2] = [
    (LabelStyle::FibreBeside, "beside carbohydrate"),
    (LabelStyle::FibreWithin, "within carbohydrate"),
];

const PACKET: [(OwnField, &str); 9] = [
    (OwnField::Fat, "Fat, g"),
    (OwnField::Carbohydrate, "Carbohydrate, g"),
    (OwnField::Sugars, "Sugars, g"),
    (OwnField::Fibre, "Fibre, g"),
    (OwnField::Protein, "Protein, g"),
    (OwnField::Salt, "Salt, g"),
    (OwnField::Sodium, "Or sodium, mg"),
    (OwnField::Water, "Water, g"),
    (OwnField::Alcohol, "Alcohol, g"),
];

const PLANTS: [(Option<bool>, &str); 3] = [
    (None, "The packet decides"),
    (Some(true), "Yes"),
    (Some(false), "No"),
];

/// Begins a new ingredient, or goes on with one that nobody has written anything into.
pub fn begin(bench: Bench) {
    begin_as(bench, OwnEntry::default());
}

/// Begins the baker's own weights of an ingredient that a recipe calls so, or goes on with those that are there.
pub fn begin_measures(bench: Bench, words: &str, like: &'static str) {
    let known = bench.own_now(|own| {
        let mut entries = own.entries.iter();
        let known =
            entries.find(|entry| entry.name == words && entry.like.as_deref() == Some(like));
        known.map(|entry| entry.key.clone())
    });
    match known {
        Some(key) => device::go(&format!("#/larder/{key}")),
        None => begin_as(
            bench,
            OwnEntry {
                name: words.to_owned(),
                like: Some(like.to_owned()),
                ..OwnEntry::default()
            },
        ),
    }
}

fn begin_as(bench: Bench, mut blank: OwnEntry) {
    let region = bench.settings_now().region;
    blank.weighings = vec![Weighing {
        region,
        ..Weighing::default()
    }];
    if matches!(region, Region::Us | Region::Ca) {
        blank.label.style = LabelStyle::FibreWithin;
    }
    let unused = bench.own_now(|own| {
        let unused = own.entries.iter().find(|entry| {
            **entry
                == OwnEntry {
                    key: entry.key.clone(),
                    ..blank.clone()
                }
        });
        unused.map(|entry| entry.key.clone())
    });
    let key = unused.unwrap_or_else(|| {
        let mut key = String::new();
        let moved = bench.change_own(|own| key = own.add(blank));
        let moved = moved.into_iter().find(|(from, _)| *from == key);
        moved.map_or(key, |(_, key)| key)
    });
    device::go(&format!("#/larder/{key}"));
}

/// The entry that the form is of.
#[derive(Clone, Copy)]
struct Of {
    bench: Bench,
    number: u32,
}

impl Of {
    /// A piece of the entry, followed; nothing once it is gone.
    fn read<R>(self, read: impl FnOnce(&OwnEntry) -> R) -> Option<R> {
        self.bench.own(|own| own.numbered(self.number).map(read))
    }

    fn change(self, change: impl FnOnce(&mut OwnEntry)) {
        self.bench.change_own(|own| {
            if let Some(entry) = own.numbered_mut(self.number) {
                change(entry);
            }
        });
    }

    /// A weighing, followed.
    fn weighing<R>(self, place: usize, read: impl FnOnce(&Weighing) -> R) -> Option<R> {
        self.read(|entry| entry.weighings.get(place).map(read))
            .flatten()
    }

    fn change_weighing(self, place: usize, change: impl FnOnce(&mut Weighing)) {
        self.change(|entry| {
            if let Some(weighing) = entry.weighings.get_mut(place) {
                change(weighing);
            }
        });
    }
}

/// The page of one own ingredient.
pub fn entry(bench: Bench, number: u32, sheet: Element) -> Element {
    let of = Of { bench, number };
    let there = Memo::new(move |_| of.read(|_| ()).is_some());
    // The form is drawn once; a letter typed changes what follows it and nothing else.
    sheet.children_of(move || match there.get() {
        true => form(of),
        false => vec![
            back("#/larder/own", "Back to your own ingredients"),
            title("Not here any more"),
            element("p").text("This ingredient was removed, here or in another window."),
        ],
    })
}

fn form(of: Of) -> Vec<Element> {
    let name = move || {
        let name = of.read(|entry| entry.name.trim().to_owned());
        name.filter(|name| !name.is_empty())
            .unwrap_or_else(|| "An ingredient of your own".into())
    };
    let shown = RwSignal::new(false);
    let words = move || {
        match shown.get() {
            true => "Hide its figures",
            false => "Show all its figures",
        }
        .to_owned()
    };
    let all = button("button", "", move || shown.update(|shown| *shown = !*shown))
        .text_of(words)
        .attribute_of("aria-expanded", move || Some(shown.get().to_string()));
    let figures = move || match shown.get() {
        true => of
            .read(|entry| groups(&card(entry.ingredient())))
            .unwrap_or_default(),
        false => Vec::new(),
    };
    vec![
        back("#/larder/own", "Back to your own ingredients"),
        title("").attribute("dir", "auto").text_of(name),
        paragraph(
            "hint",
            "Whatever you write is kept at once. Leave empty what you do not know: it counts as not known, never as none.",
        ),
        names(of),
        packet(of),
        scale(of),
        rest(of),
        all,
        element("div").class("larder__figures").children_of(figures),
    ]
}

fn fieldset(legend: &'static str, hint: &'static str) -> Element {
    element("fieldset")
        .class("choice")
        .child(element("legend").class("choice__legend").text(legend))
        .child(paragraph("hint", hint))
}

/// A field of the entry.
fn field(
    of: Of,
    field: OwnField,
    id: String,
    keypad: &'static str,
    label: &'static str,
) -> Element {
    text_field(
        format!("own-{id}"),
        keypad,
        move || label.to_owned(),
        move || {
            of.read(|entry| entry.clone().field(field).cloned())
                .flatten()
                .unwrap_or_default()
        },
        move || {
            let trouble = of.read(|entry| {
                let mut troubles = entry.troubles().into_iter();
                troubles.find(|trouble| trouble.field == field)
            });
            Some(trouble??.sentence)
        },
        move |text| {
            of.change(|entry| {
                if let Some(typed) = entry.field(field) {
                    *typed = text;
                }
            })
        },
    )
}

/// A field of free words, in which nothing can be wrong.
fn words(
    of: Of,
    id: &'static str,
    label: &'static str,
    text: fn(&mut OwnEntry) -> &mut String,
) -> Element {
    text_field(
        format!("own-{id}"),
        "text",
        move || label.to_owned(),
        move || {
            of.read(|entry| text(&mut entry.clone()).clone())
                .unwrap_or_default()
        },
        || None,
        move |typed| of.change(|entry| *text(entry) = typed),
    )
}

fn names(of: Of) -> Element {
    fieldset("Its name", "As you write it in a recipe.").children([
        field(of, OwnField::Name, "name".into(), "text", "Name"),
        words(
            of,
            "also",
            "Other names, with commas between them",
            |entry| &mut entry.also_called,
        ),
        like(of),
    ])
}

/// What it is like: chosen by its name.
fn like(of: Of) -> Element {
    let asked = RwSignal::new(String::new());
    let chosen = move || of.read(OwnEntry::like).flatten();
    let said = move || match chosen() {
        Some(like) => format!("Like {}.", like.name),
        None => String::new(),
    };
    let offers = move || {
        let offers = asked.with(|asked| find(asked, &[], Region::default(), OFFERS));
        offers
            .into_iter()
            .map(|known| {
                let key = known.key;
                let choose = button("button button--offer", known.name, move || {
                    asked.set(String::new());
                    of.change(|entry| entry.like = Some(key.clone()));
                    // What was touched is gone, and the focus with it.
                    device::focus("own-like");
                });
                element("li").child(choose)
            })
            .collect()
    };
    let input = element("input")
        .class("input")
        .attribute("id", "own-like")
        .attribute("type", "search")
        .attribute("autocomplete", "off")
        .attribute("aria-describedby", "own-like-hint own-like-said")
        .value_of(move || asked.get())
        .on_value("input", move |typed| asked.set(typed));
    let hint = "Its acid, leavening, weights and shares stand in for what you do not give, and every such figure says so.";
    element("div").class("field").children([
        element("label")
            .class("label")
            .attribute("for", "own-like")
            .text("It is much like"),
        paragraph("hint", hint).attribute("id", "own-like-hint"),
        input,
        element("ul")
            .class("offers")
            .attribute("aria-label", "Ingredients that it may be like")
            .children_of(offers),
        paragraph("larder__said", "")
            .attribute("id", "own-like-said")
            .attribute("role", "status")
            .text_of(said),
        button("button button--plain", "Like nothing here", move || {
            of.change(|entry| entry.like = None);
            device::focus("own-like");
        })
        .hidden_while(move || chosen().is_none()),
    ])
}

fn packet(of: Of) -> Element {
    let style = select(
        "own-style".into(),
        "Fibre is counted",
        STYLES.map(|(_, words)| words).into(),
        move || {
            let style = of.read(|entry| entry.label.style).unwrap_or_default();
            place(&STYLES.map(|(known, _)| known), style)
        },
        move |at| of.change(|entry| entry.label.style = STYLES[at.min(1)].0),
    );
    let fields = PACKET
        .iter()
        .enumerate()
        .map(|(at, &(which, label))| field(of, which, at.to_string(), "decimal", label));
    let said = move || {
        let said = of.read(OwnEntry::packet_sentences).unwrap_or_default();
        said.into_iter()
            .map(|sentence| element("li").text(sentence))
            .collect()
    };
    fieldset(
        "From the packet",
        "As printed; \"<0.5\" can be written too. Fibre is counted beside the carbohydrate in the EU, the UK, Australia and \
         New Zealand, within it in the US and Canada. Water is worked out when the rest is there.",
    )
    .child(style)
    .child(field(
        of,
        OwnField::Per,
        "per".into(),
        "decimal",
        "The figures are for so many grams",
    ))
    .child(element("div").class("larder__fields").children(fields))
    .child(
        element("ul")
            .class("larder__said")
            .attribute("aria-label", "What the packet's figures come to")
            .children_of(said),
    )
}

/// Where one stands in a list; the first where it is not in it.
fn place<T: PartialEq>(all: &[T], one: T) -> usize {
    all.iter().position(|known| *known == one).unwrap_or(0)
}

/// The button that puts back a measure that was removed: the focus goes there, since what was touched is gone.
const PUT_BACK: &str = "own-put-back";

/// A measure that was removed, and where it stood.
type GoneMeasure = RwSignal<Option<(usize, Weighing)>>;

fn scale(of: Of) -> Element {
    let gone = GoneMeasure::new(None);
    let many = move || of.read(|entry| entry.weighings.len()).unwrap_or(0);
    let another = button("button button--plain", "Weigh another measure", move || {
        let region = of.bench.settings_now().region;
        of.change(|entry| {
            entry.weighings.push(Weighing {
                region,
                ..Weighing::default()
            })
        });
    })
    .attribute("id", "own-another")
    .hidden_while(move || many() >= MOST_WEIGHINGS);
    fieldset(
        "Weigh one measure three times",
        "Fill it afresh each time, as you do when you bake, level it, and write the grams. How far they lie apart tells \
         how far the next one may.",
    )
    .child(
        element("div")
            .class("larder__weighings")
            .rows_of(move || (0..many()).collect(), move |at| weighing(of, gone, at)),
    )
    .child(
        element("div")
            .attribute("role", "status")
            .children_of(move || put_measure_back(of, gone)),
    )
    .child(another)
}

fn put_measure_back(of: Of, gone: GoneMeasure) -> Vec<Element> {
    let Some((at, weighing)) = gone.get() else {
        return Vec::new();
    };
    let words = format!("Removed: measure {}.", at + 1);
    let put_back = button("button", "Put it back", move || {
        gone.set(None);
        of.change(|entry| {
            let at = at.min(entry.weighings.len());
            entry.weighings.insert(at, weighing.clone());
        });
        device::focus("own-another");
    });
    let bar = element("div")
        .class("done")
        .child(paragraph("done__words", words))
        .child(put_back.attribute("id", PUT_BACK));
    vec![bar]
}

/// A choice of a weighing. What it reads and changes are plain functions, so that all of them share one type.
fn choice_of(
    of: Of,
    at: usize,
    label: &'static str,
    options: Vec<&'static str>,
    now: fn(&Weighing) -> usize,
    choose: fn(&mut Weighing, usize),
) -> Element {
    let id = label.to_ascii_lowercase().replace(' ', "-");
    select(
        format!("own-weighing-{at}-{id}"),
        label,
        options,
        move || of.weighing(at, now).unwrap_or(0),
        move |chosen| of.change_weighing(at, |weighing| choose(weighing, chosen)),
    )
}

fn weighing(of: Of, gone: GoneMeasure, at: usize) -> Element {
    // The first of a list of states or of ways is none of them.
    let mut forms = vec!["as it is"];
    forms.extend(Form::ALL.map(Form::words));
    let mut ways = vec!["any way"];
    ways.extend(Filling::ALL.map(Filling::words));
    let choices = [
        choice_of(
            of,
            at,
            "Measure",
            SpoonOrCup::ALL.map(SpoonOrCup::words).into(),
            |weighing| place(&SpoonOrCup::ALL, weighing.measure),
            |weighing, chosen| weighing.measure = SpoonOrCup::ALL[chosen.min(2)],
        ),
        choice_of(
            of,
            at,
            "Size of",
            Region::ALL.map(Region::words).into(),
            |weighing| place(&Region::ALL, weighing.region),
            |weighing, chosen| weighing.region = Region::ALL[chosen.min(4)],
        ),
        choice_of(
            of,
            at,
            "State",
            forms,
            |weighing| weighing.form.map_or(0, |form| 1 + place(&Form::ALL, form)),
            |weighing, chosen| {
                weighing.form = chosen
                    .checked_sub(1)
                    .and_then(|at| Form::ALL.get(at))
                    .copied()
            },
        ),
        choice_of(
            of,
            at,
            "How it is filled",
            ways,
            |weighing| {
                weighing
                    .filling
                    .map_or(0, |way| 1 + place(&Filling::ALL, way))
            },
            |weighing, chosen| {
                weighing.filling = chosen
                    .checked_sub(1)
                    .and_then(|at| Filling::ALL.get(at))
                    .copied()
            },
        ),
    ];
    const LABELS: [&str; 5] = ["First, g", "Second, g", "Third, g", "Fourth, g", "Fifth, g"];
    let many = of
        .bench
        .own_now(|own| {
            own.numbered(of.number).map(|entry| {
                entry
                    .weighings
                    .get(at)
                    .map_or(3, |weighing| weighing.figures.len())
            })
        })
        .unwrap_or(3);
    let figures = LABELS.iter().take(many).enumerate().map(|(figure, label)| {
        let which = OwnField::Weighing(at, figure);
        field(
            of,
            which,
            format!("weighing-{at}-{figure}"),
            "decimal",
            label,
        )
    });
    let said = move || of.weighing(at, Weighing::sentence).unwrap_or_default();
    let remove = button("button button--plain", "Remove this measure", move || {
        of.change(|entry| {
            if at < entry.weighings.len() {
                gone.set(Some((at, entry.weighings.remove(at))));
            }
        });
        device::focus(PUT_BACK);
    });
    element("div")
        .class("larder__weighing")
        .attribute("role", "group")
        .attribute("aria-label", format!("Measure {}", at + 1))
        .child(element("div").class("larder__fields").children(choices))
        .child(
            element("div")
                .class("larder__figures-three")
                .children(figures),
        )
        .child(paragraph("larder__said", "").text_of(said))
        .child(remove)
}

fn rest(of: Of) -> Element {
    let plants = select(
        "own-plants".into(),
        "From plants alone",
        PLANTS.map(|(_, words)| words).into(),
        move || {
            let plants = of.read(|entry| entry.plant_based).flatten();
            place(&PLANTS.map(|(known, _)| known), plants)
        },
        move |at| of.change(|entry| entry.plant_based = PLANTS[at.min(2)].0),
    );
    let flour = tick(
        "It counts as flour, the 100 % of baker's percentages",
        move || of.read(|entry| entry.flour) == Some(true),
        move || of.change(|entry| entry.flour = !entry.flour),
    );
    let allergens = Allergen::ALL.map(|allergen| {
        tick(
            allergen.words(),
            move || of.read(|entry| entry.allergens.contains(&allergen)) == Some(true),
            move || {
                of.change(|entry| {
                    let before = entry.allergens.len();
                    entry.allergens.retain(|known| *known != allergen);
                    if entry.allergens.len() == before {
                        entry.allergens.push(allergen);
                    }
                })
            },
        )
    });
    let allergens = element("fieldset")
        .class("choice")
        .child(
            element("legend")
                .class("label")
                .text("Allergens that the packet names"),
        )
        .child(element("div").class("larder__fields").children(allergens));
    let numbers = [
        field(
            of,
            OwnField::Piece,
            "piece".into(),
            "decimal",
            "One piece weighs, g",
        ),
        field(
            of,
            OwnField::Ph,
            "ph".into(),
            "decimal",
            "pH that you measured",
        ),
    ];
    fieldset(
        "What else you know",
        "A pH alone does not tell how much soda it uses up: say above what it is much like, too.",
    )
    .child(element("div").class("larder__fields").children(numbers))
    .child(plants)
    .child(flour)
    .child(allergens)
    .child(words(of, "note", "A note of yours", |entry| {
        &mut entry.note
    }))
}

fn tick(
    words: &'static str,
    now: impl Fn() -> bool + 'static,
    turn: impl Fn() + 'static,
) -> Element {
    let field = element("input")
        .class("choice__button")
        .attribute("type", "checkbox")
        .chosen_while(now)
        .on("change", move |_| turn());
    element("label")
        .class("choice__option")
        .child(field)
        .child(element("span").text(words))
}
