//! An element as it is to be drawn. It knows of no browser until it is.

use crate::baking::quantity::show;
use std::borrow::Cow;
use std::rc::Rc;
use web_sys::Event;

/// Words: written in this program, or made while it runs.
pub type Words = Cow<'static, str>;

/// What stands inside an element.
pub enum Node {
    /// Words.
    Text(Words),
    /// An element.
    Element(Element),
}

/// What an event brings about.
pub(super) type Listener = Rc<dyn Fn(&Event)>;

/// Something about an element that follows signals.
pub(super) enum Following {
    /// An attribute; `None` takes it away.
    Attribute(&'static str, Box<dyn Fn() -> Option<String>>),
    /// The value of a field, as a property.
    Value(Box<dyn Fn() -> String>),
    /// Whether a button of a choice is chosen, as a property.
    Chosen(Box<dyn Fn() -> bool>),
    /// All its children.
    Children(Box<dyn Fn() -> Vec<Node>>),
    /// All its attributes and children, as those of another element of that name, which listens to nothing.
    Whole(Box<dyn Fn() -> Element>),
    /// One child for each key; keys stand in rising order. A row that stays is left alone.
    Rows(Box<dyn Fn() -> Vec<usize>>, Box<dyn Fn(usize) -> Element>),
}

/// An element: its name, attributes, what it listens to, what follows signals, its children.
///
/// It is a box, so that handing it on from call to call, as building one does, costs little code.
pub struct Element(pub(super) Box<Parts>);

/// What an element consists of.
pub(super) struct Parts {
    pub(super) name: &'static str,
    /// True for the elements of a drawing (SVG).
    pub(super) drawing: bool,
    pub(super) attributes: Vec<(&'static str, Words)>,
    pub(super) listeners: Vec<(&'static str, Listener)>,
    pub(super) following: Vec<Following>,
    pub(super) children: Vec<Node>,
    /// Whether what is inside may wait while it is out of sight.
    pub(super) watched: bool,
}

/// An element of the page.
pub fn element(name: &'static str) -> Element {
    new(name, false)
}

/// An element of a drawing.
pub fn drawing(name: &'static str) -> Element {
    new(name, true)
}

#[inline(never)]
fn new(name: &'static str, drawing: bool) -> Element {
    Element(Box::new(Parts {
        name,
        drawing,
        attributes: Vec::new(),
        listeners: Vec::new(),
        following: Vec::new(),
        children: Vec::new(),
        watched: false,
    }))
}

impl Element {
    /// With this class, or these.
    pub fn class(self, class: impl Into<Words>) -> Self {
        self.with_attribute("class", class.into())
    }

    /// With this attribute.
    pub fn attribute(self, name: &'static str, value: impl Into<Words>) -> Self {
        self.with_attribute(name, value.into())
    }

    // The calls below are the ones that do the work; kept apart, they are there once and not at each use.

    #[inline(never)]
    fn with_attribute(mut self, name: &'static str, value: Words) -> Self {
        self.0.attributes.push((name, value));
        self
    }

    #[inline(never)]
    fn with_node(mut self, node: Node) -> Self {
        self.0.children.push(node);
        self
    }

    #[inline(never)]
    fn with_following(mut self, following: Following) -> Self {
        self.0.following.push(following);
        self
    }

    #[inline(never)]
    fn with_listener(mut self, event: &'static str, listener: Listener) -> Self {
        self.0.listeners.push((event, listener));
        self
    }

    /// With an attribute that is a figure of a drawing.
    pub fn figure(self, name: &'static str, value: f64) -> Self {
        self.attribute(name, show::fixed(value, 1))
    }

    /// With an attribute that follows signals; `None` takes it away.
    pub fn attribute_of(
        self,
        name: &'static str,
        of: impl Fn() -> Option<String> + 'static,
    ) -> Self {
        self.with_following(Following::Attribute(name, Box::new(of)))
    }

    /// Hidden while this holds.
    pub fn hidden_while(self, hidden: impl Fn() -> bool + 'static) -> Self {
        self.attribute_of("hidden", move || hidden().then(String::new))
    }

    /// With the value of a field.
    pub fn value_of(self, of: impl Fn() -> String + 'static) -> Self {
        self.with_following(Following::Value(Box::new(of)))
    }

    /// Chosen while this holds.
    pub fn chosen_while(self, of: impl Fn() -> bool + 'static) -> Self {
        self.with_following(Following::Chosen(Box::new(of)))
    }

    /// Calls back on an event.
    pub fn on(self, event: &'static str, call: impl Fn(&Event) + 'static) -> Self {
        self.with_listener(event, Rc::new(call))
    }

    /// Calls back with what stands in the field, as it is typed or chosen.
    pub fn on_value(self, event: &'static str, call: impl Fn(String) + 'static) -> Self {
        self.on(event, move |event| {
            call(value_of(event));
        })
    }

    /// Calls back when touched.
    pub fn on_touch(self, call: impl Fn() + 'static) -> Self {
        self.on("click", move |_| call())
    }

    /// With these words after what it holds already.
    pub fn text(self, words: impl Into<Words>) -> Self {
        self.with_node(Node::Text(words.into()))
    }

    /// With this element after what it holds already.
    pub fn child(self, child: Element) -> Self {
        self.with_node(Node::Element(child))
    }

    /// With these elements after what it holds already.
    pub fn children(mut self, children: impl IntoIterator<Item = Element>) -> Self {
        self.0
            .children
            .extend(children.into_iter().map(Node::Element));
        self
    }

    /// With words that follow signals; they are all that it holds.
    pub fn text_of(self, of: impl Fn() -> String + 'static) -> Self {
        self.with_following(Following::Children(Box::new(move || {
            vec![Node::Text(of().into())]
        })))
    }

    /// With elements that follow signals; they are all that it holds.
    pub fn children_of(self, of: impl Fn() -> Vec<Element> + 'static) -> Self {
        self.with_following(Following::Children(Box::new(move || {
            of().into_iter().map(Node::Element).collect()
        })))
    }

    /// With attributes and children that follow signals together; they are all that it has. Of the element that is
    /// given, the name is of no account and nothing is listened to.
    pub fn drawn_as(self, of: impl Fn() -> Self + 'static) -> Self {
        self.with_following(Following::Whole(Box::new(of)))
    }

    /// While it is out of sight, what follows signals inside it may be drawn a moment after what is in sight.
    pub fn may_wait(mut self) -> Self {
        self.0.watched = true;
        self
    }

    /// With a row for each key, in rising order; they are all that it holds.
    pub fn rows_of(
        self,
        keys: impl Fn() -> Vec<usize> + 'static,
        row: impl Fn(usize) -> Element + 'static,
    ) -> Self {
        self.with_following(Following::Rows(Box::new(keys), Box::new(row)))
    }
}

/// What stands in the field that an event came from.
fn value_of(event: &Event) -> String {
    let value = event
        .target()
        .and_then(|target| js_sys::Reflect::get(&target, &"value".into()).ok());
    value
        .and_then(|value| value.as_string())
        .unwrap_or_default()
}
