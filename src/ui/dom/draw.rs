//! Drawing: elements put on the page, and changed in place when what they follow changes.

use super::element::{Element, Following, Listener, Node, Words};
use super::sight::Scene;
use leptos::mount::mount_to;
use leptos::prelude::{Owner, RenderEffect, RwSignal, document, set_timeout, untrack};
use std::any::Any;
use std::cell::RefCell;
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

const DRAWING: &str = "http://www.w3.org/2000/svg";

/// Something that is on the page.
enum Drawn {
    Text(web_sys::Node, Words),
    Element(DrawnElement),
}

struct DrawnElement {
    name: &'static str,
    element: web_sys::Element,
    attributes: Vec<(&'static str, Words)>,
    listening: Vec<Listening>,
    children: Vec<Drawn>,
    /// What keeps this element in step with signals; dropping it ends that.
    following: Vec<Box<dyn Any>>,
}

/// A listener whose call can be exchanged without the browser being told.
struct Listening {
    event: &'static str,
    call: Rc<RefCell<Listener>>,
    _closure: Closure<dyn FnMut(web_sys::Event)>,
}

/// A row with its key and its own share of the reactive graph.
struct Row {
    key: usize,
    drawn: Drawn,
    owner: Owner,
}

/// Draws elements at the end of a place on the page, for as long as the page lives. `build` gives them, and what tells
/// whether the page is in haste. Where the page begins by pieces, the first are there at once; `then` is called when all are.
pub fn mount(
    place: web_sys::HtmlElement,
    by_pieces: bool,
    build: impl FnOnce() -> (Vec<Element>, RwSignal<bool>) + 'static,
    then: impl FnOnce() + 'static,
) {
    let inside = place.clone();
    // Leptos starts its scheduler and owns the graph; it has nothing to draw itself.
    mount_to(place, move || {
        let (elements, haste) = build();
        let scene = Scene::new(haste, by_pieces);
        let drawn = patch(
            &scene,
            &inside,
            Vec::new(),
            elements.into_iter().map(Node::Element).collect(),
        );
        // The page's elements stay for good; dropping them here would end what they follow.
        std::mem::forget(drawn);
        draw_pieces(scene, then);
    })
    .forget();
}

/// Draws what a page that begins has left, each piece by a task of its own.
fn draw_pieces(scene: Scene, then: impl FnOnce() + 'static) {
    let next = move || match scene.draw_piece() {
        true => draw_pieces(scene, then),
        false => then(),
    };
    set_timeout(next, Duration::ZERO);
}

impl Drawn {
    fn node(&self) -> &web_sys::Node {
        match self {
            Self::Text(node, _) => node,
            Self::Element(drawn) => &drawn.element,
        }
    }

    fn remove(self) {
        let node = self.node();
        if let Some(parent) = node.parent_node() {
            done(parent.remove_child(node));
        }
    }
}

/// The calls below fail only for names and places that no code of ours gives; the page goes on without.
fn done<T>(result: Result<T, JsValue>) -> Option<T> {
    if let Err(error) = &result {
        leptos::logging::error!("The page could not be drawn: {error:?}");
    }
    result.ok()
}

fn draw(scene: &Scene, node: Node) -> Drawn {
    match node {
        Node::Text(words) => Drawn::Text(document().create_text_node(&words).into(), words),
        Node::Element(element) => Drawn::Element(draw_element(scene, element)),
    }
}

fn draw_element(scene: &Scene, new: Element) -> DrawnElement {
    let new = *new.0;
    let made = if new.drawing {
        document().create_element_ns(Some(DRAWING), new.name)
    } else {
        document().create_element(new.name)
    };
    let element = made.expect("names of elements are written in this program, and valid");
    for (name, value) in &new.attributes {
        done(element.set_attribute(name, value));
    }
    let listening = new
        .listeners
        .into_iter()
        .map(|(event, call)| listen(&element, event, call))
        .collect();
    let watched = new.watched.then(|| scene.inside(&element));
    let is_piece = new.watched && scene.is_piece();
    let scene = watched.as_ref().map_or(scene, |(inside, _)| inside);
    let (children, mut following) = match is_piece {
        true => (
            Vec::new(),
            vec![fill_later(scene, &element, new.children, new.following)],
        ),
        false => fill(scene, &element, new.children, new.following),
    };
    if let Some((_, Some(watch))) = watched {
        following.push(Box::new(watch));
    }
    DrawnElement {
        name: new.name,
        element,
        attributes: new.attributes,
        listening,
        children,
        following,
    }
}

/// Draws what stands inside an element, and what follows signals about it.
fn fill(
    scene: &Scene,
    element: &web_sys::Element,
    children: Vec<Node>,
    following: Vec<Following>,
) -> (Vec<Drawn>, Vec<Box<dyn Any>>) {
    let children = patch(scene, element, Vec::new(), children);
    let follow = |following| follow(scene.clone(), element.clone(), following);
    (children, following.into_iter().map(follow).collect())
}

/// The same when its turn has come, unless the element has gone by then. What is given back keeps it drawn.
fn fill_later(
    scene: &Scene,
    element: &web_sys::Element,
    children: Vec<Node>,
    following: Vec<Following>,
) -> Box<dyn Any> {
    let kept = Rc::new(RefCell::new(None));
    let (inside, place, drawn) = (scene.clone(), element.clone(), kept.clone());
    let owner = Owner::current().unwrap_or_default();
    scene.add_piece(Box::new(move || {
        if place.is_connected() {
            let filled = owner.with(|| fill(&inside, &place, children, following));
            drawn.replace(Some(filled));
        }
    }));
    Box::new(kept)
}

fn listen(element: &web_sys::Element, event: &'static str, call: Listener) -> Listening {
    let call = Rc::new(RefCell::new(call));
    let heard = call.clone();
    let closure = Closure::<dyn FnMut(web_sys::Event)>::new(move |event| {
        // Taken out first: what is called may bring about that it is exchanged.
        let call = heard.borrow().clone();
        call(&event);
    });
    done(element.add_event_listener_with_callback(event, closure.as_ref().unchecked_ref()));
    Listening {
        event,
        call,
        _closure: closure,
    }
}

fn follow(scene: Scene, element: web_sys::Element, following: Following) -> Box<dyn Any> {
    match following {
        Following::Attribute(name, of) => {
            in_step(scene, move |_, before: Option<Option<String>>| {
                let now = of();
                if before.as_ref() != Some(&now) {
                    match &now {
                        Some(value) => done(element.set_attribute(name, value)),
                        None => done(element.remove_attribute(name)),
                    };
                }
                now
            })
        }
        Following::Value(of) => property(scene, element, "value", Box::new(move || of().into())),
        Following::Chosen(of) => property(scene, element, "checked", Box::new(move || of().into())),
        Following::Children(of) => in_step(scene, move |scene, before: Option<Vec<Drawn>>| {
            patch(scene, &element, before.unwrap_or_default(), of())
        }),
        Following::Whole(of) => in_step(scene, move |scene, before: Option<DrawnElement>| {
            let before = before.unwrap_or_else(|| bare(element.clone()));
            change_element(scene, before, of())
        }),
        Following::Rows(keys, row) => {
            let owner = Owner::current().unwrap_or_default();
            in_step(scene, move |scene, before: Option<Vec<Row>>| {
                let keys = keys();
                let before = before.unwrap_or_default();
                // What a row reads while it is drawn is its own affair.
                untrack(|| patch_rows(scene, &element, &owner, before, keys, &row))
            })
        }
    }
}

/// Draws now and whenever what is followed changes; in haste and out of sight, once the haste is over.
fn in_step<T: 'static>(
    scene: Scene,
    draw: impl Fn(&Scene, Option<T>) -> T + 'static,
) -> Box<dyn Any> {
    Box::new(RenderEffect::new(move |before| match before {
        Some(before) if scene.may_wait() => before,
        before => draw(&scene, before),
    }))
}

fn property(
    scene: Scene,
    element: web_sys::Element,
    name: &'static str,
    of: Box<dyn Fn() -> JsValue>,
) -> Box<dyn Any> {
    in_step(scene, move |_, _: Option<()>| {
        done(js_sys::Reflect::set(&element, &name.into(), &of()));
    })
}

/// An element that has nothing yet.
fn bare(element: web_sys::Element) -> DrawnElement {
    DrawnElement {
        name: "",
        element,
        attributes: Vec::new(),
        listening: Vec::new(),
        children: Vec::new(),
        following: Vec::new(),
    }
}

/// Makes the children of an element what they are to be, keeping every one that fits.
fn patch(
    scene: &Scene,
    parent: &web_sys::Node,
    mut before: Vec<Drawn>,
    now: Vec<Node>,
) -> Vec<Drawn> {
    for gone in before
        .drain(now.len().min(before.len())..)
        .collect::<Vec<_>>()
    {
        gone.remove();
    }
    let mut before = before.into_iter();
    let change = |node| match before.next() {
        Some(drawn) => change(scene, parent, drawn, node),
        None => {
            let drawn = draw(scene, node);
            done(parent.append_child(drawn.node()));
            drawn
        }
    };
    now.into_iter().map(change).collect()
}

fn change(scene: &Scene, parent: &web_sys::Node, before: Drawn, now: Node) -> Drawn {
    match (before, now) {
        (Drawn::Text(node, old), Node::Text(new)) => {
            if old != new {
                node.set_text_content(Some(&new));
            }
            Drawn::Text(node, new)
        }
        (Drawn::Element(old), Node::Element(new)) if fits(&old, &new) => {
            Drawn::Element(change_element(scene, old, new))
        }
        (before, now) => {
            let drawn = draw(scene, now);
            done(parent.replace_child(drawn.node(), before.node()));
            drawn
        }
    }
}

/// Elements that follow signals are drawn afresh: what they followed was given up with the run that drew them.
fn fits(old: &DrawnElement, new: &Element) -> bool {
    old.name == new.0.name
        && old.following.is_empty()
        && new.0.following.is_empty()
        && old.listening.len() == new.0.listeners.len()
        && old
            .listening
            .iter()
            .zip(&new.0.listeners)
            .all(|(old, new)| old.event == new.0)
}

fn change_element(scene: &Scene, mut old: DrawnElement, new: Element) -> DrawnElement {
    let new = *new.0;
    for (name, _) in &old.attributes {
        if !new.attributes.iter().any(|(kept, _)| kept == name) {
            done(old.element.remove_attribute(name));
        }
    }
    for attribute in &new.attributes {
        if !old.attributes.contains(attribute) {
            done(old.element.set_attribute(attribute.0, &attribute.1));
        }
    }
    old.attributes = new.attributes;
    for (listening, (_, call)) in old.listening.iter().zip(new.listeners) {
        listening.call.replace(call);
    }
    old.children = patch(scene, &old.element, old.children, new.children);
    old
}

/// Walks the rows that are there and the rows that are to be side by side; both rise by their keys.
fn patch_rows(
    scene: &Scene,
    parent: &web_sys::Element,
    owner: &Owner,
    before: Vec<Row>,
    keys: Vec<usize>,
    row: &dyn Fn(usize) -> Element,
) -> Vec<Row> {
    let mut before = before.into_iter().peekable();
    let mut now = Vec::with_capacity(keys.len());
    for key in keys {
        while let Some(gone) = before.next_if(|row| row.key < key) {
            gone.drawn.remove();
            gone.owner.cleanup();
        }
        let kept = before.next_if(|row| row.key == key);
        now.push(kept.unwrap_or_else(|| {
            let row_owner = owner.with(Owner::new);
            let drawn = row_owner.with(|| draw(scene, Node::Element(row(key))));
            done(parent.insert_before(drawn.node(), before.peek().map(|next| next.drawn.node())));
            Row {
                key,
                drawn,
                owner: row_owner,
            }
        }));
    }
    for gone in before {
        gone.drawn.remove();
        gone.owner.cleanup();
    }
    now
}
