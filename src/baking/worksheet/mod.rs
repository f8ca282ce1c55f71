//! The one door: text, choices and settings in, a [`Worksheet`] out.
//!
//! Everything that a page, the printed sheet or the example program shows is in that record, in
//! figures and in words, so that nobody downstream adds, rounds or judges.

mod altitude;
mod backwards;
mod bake;
mod diagnosis;
mod difference;
mod gather;
mod input;
mod kitchen;
mod leavening;
mod line;
mod mixing;
mod oven;
mod oven_ask;
mod pans;
mod record;
mod said;
mod standing;
mod sugar;
mod swap;
mod swap_best;
mod swap_entry;
mod swap_offers;
mod swap_said;
mod swap_taken;
mod swap_wishes;
mod totals;
mod weigh_in;

pub use crate::baking::recipe::Looks;
pub use altitude::{AltitudeRow, AltitudeSheet};
pub use backwards::{Change, LeaveningPlan, leavening_plan};
pub use bake::{BakeSheet, bake_sheet};
pub use diagnosis::{CauseView, DiagnosisSheet, at_heat_read, diagnosis, is_baked_otherwise};
pub use difference::{
    Amount, Call, Difference, FigureChange, FigureSide, FindingNote, IngredientChange, SaidChange,
    difference,
};
pub use gather::{crumb_beyond, kind_of, worksheet, worksheet_again};
pub use input::{Choices, CupHabit, EggSize, Inputs, LinePart, ScaleStep, Settings};
pub use mixing::{MixingEntry, MixingSheet, mixing_sheet};
pub use oven::{AskedPan, BakeView, OvenEntry, OvenSheet, TimedBake};
pub use said::{BatterCup, BatterSaid, CrumbTold};
pub use standing::{PullPair, RangeRow, RangeSheet};
pub use swap::{AmountNote, SwapNote, SwapPlan, swap_plan, swap_plan_again};
pub use swap_entry::{LineWords, SwapEntry, SwapLine};
pub use swap_offers::{SwapOffer, swap_offers};
pub use swap_said::Judgement;
pub use weigh_in::{
    BesideRow, BowlSheet, MethodRow, Miss, PutIn, TimeOffer, WeighIn, WeighInSheet, WeighRow,
    grams_typed, weigh_in_sheet,
};

pub use crate::baking::finding::{Severity, Verdict, VerdictKind};
pub use crate::baking::quantity::LengthUnit;
pub use record::{
    AcidShare, AllergenNote, BalanceSheet, CountrySheet, EggCount, EggOffer, EggSheet, FigureShown,
    GasMoment, GasSheet, LeaveningSheet, Offer, PanSheet, PanView, PartTotal, PhRule, SheetLine,
    SourceNote, Spread, Status, SugarFigures, TableRow, Worksheet,
};
