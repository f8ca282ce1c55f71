//! What one piece weighs: an egg, a stick, a banana, the juice of one lemon.

use crate::baking::{estimate::Estimate, quantity::Mass, source::Cited};
use serde::{Deserialize, Serialize};

/// One row of `pieces.csv`: the weight of one piece, ready for the bowl (shelled, peeled, squeezed).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PieceWeight {
    /// What is counted.
    pub piece: Piece,
    /// Its size class, if the row names one.
    pub size: Option<PieceSize>,
    /// Where that size class holds; `None` everywhere.
    pub region: Option<Region>,
    /// The weight.
    pub weight: Estimate<Mass>,
    /// Where it is from.
    pub cited: Cited,
    /// A word of explanation.
    pub note: &'static str,
}

/// What is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Piece {
    /// The thing itself: an egg, a carrot; for a juice or zest, what one fruit gives.
    Each,
    /// A wrapped stick of fat.
    Stick,
    /// A slice or a thin round.
    Slice,
    /// A stalk.
    Stalk,
    /// A square of a bar.
    Square,
    /// A whole bar.
    Bar,
    /// A packet, sachet or envelope.
    Packet,
    /// A tin or can.
    Can,
    /// A block.
    Block,
    /// A carton, pot or tub.
    Pot,
    /// A knob, as of butter.
    Knob,
    /// A pinch between two fingers.
    Pinch,
    /// A dash.
    Dash,
    /// A drop.
    Drop,
    /// A handful.
    Handful,
    /// A piece as long as a thumb's top joint, about an inch: ginger.
    Inch,
    /// A pod, as of vanilla or cardamom.
    Pod,
    /// A sprig or a leaf.
    Sprig,
}

/// Size classes as sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PieceSize {
    /// Small.
    Small,
    /// Medium.
    Medium,
    /// Large.
    Large,
    /// Extra large.
    ExtraLarge,
    /// Jumbo or king.
    Jumbo,
}

/// Where a word or a size class has its meaning.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Region {
    /// United States.
    #[default]
    Us,
    /// United Kingdom, Ireland and, for eggs, the European Union.
    Uk,
    /// Australia.
    Au,
    /// New Zealand.
    Nz,
    /// Canada.
    Ca,
}

impl Region {
    /// Every country, in the order shown.
    pub const ALL: [Self; 5] = [Self::Us, Self::Uk, Self::Au, Self::Nz, Self::Ca];

    /// The country on the page.
    pub fn words(self) -> &'static str {
        match self {
            Self::Us => "United States",
            Self::Uk => "United Kingdom and Ireland",
            Self::Au => "Australia",
            Self::Nz => "New Zealand",
            Self::Ca => "Canada",
        }
    }
}

impl Piece {
    /// The piece in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Each => "piece",
            Self::Stick => "stick",
            Self::Slice => "slice",
            Self::Stalk => "stalk",
            Self::Square => "square",
            Self::Bar => "bar",
            Self::Packet => "packet",
            Self::Can => "tin",
            Self::Block => "block",
            Self::Pot => "pot",
            Self::Knob => "knob",
            Self::Pinch => "pinch",
            Self::Dash => "dash",
            Self::Drop => "drop",
            Self::Handful => "handful",
            Self::Inch => "inch",
            Self::Pod => "pod",
            Self::Sprig => "sprig",
        }
    }
}

impl PieceSize {
    /// The size in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Small => "small",
            Self::Medium => "medium",
            Self::Large => "large",
            Self::ExtraLarge => "extra large",
            Self::Jumbo => "jumbo",
        }
    }
}
