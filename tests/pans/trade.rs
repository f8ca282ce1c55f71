//! Batter that the trade weighs into its pans, beside what the usual fill and weight of the kind come to.

use super::kit::near;
use batterwright::baking::balance::Kind;
use batterwright::baking::pan::{batter_of, size};
use batterwright::baking::quantity::Volume;

const TRADE: &str = include_str!("trade.tsv");

fn kind(word: &str) -> Kind {
    match word {
        "high_ratio_yellow" => Kind::HighRatioYellow,
        "yellow_layer" => Kind::YellowLayer,
        "white_layer" => Kind::WhiteLayer,
        "pound" => Kind::Pound,
        "sponge" => Kind::Sponge,
        "angel_food" => Kind::AngelFood,
        other => panic!("no kind {other}"),
    }
}

/// The two ranges meet, or the row says why they don't.
#[test]
fn batter_for_each_pan_is_as_in_the_trade() {
    let rows = TRADE.lines().filter(|line| !line.starts_with('#')).skip(1);
    let mut count = 0;
    for row in rows {
        let cells: Vec<&str> = row.split('\t').collect();
        let [family, key, of, pans, low, high, _, differs] = cells[..] else {
            panic!("eight cells in a row: {row}");
        };
        let figure = |text: &str| text.parse::<f64>().expect("a figure");
        let (pans, low, high) = (figure(pans), figure(low), figure(high));
        let batter = batter_of(kind(of));
        let fill = batter.fill.expect("a usual fill");
        let brim = size(key).expect("a size").pan.one().brim() * pans;
        let grams = |fill: f64| (brim * fill * batter.density.mean).to_grams();
        let (least, most) = (
            grams(fill.low.to_fraction()),
            grams(fill.high.to_fraction()),
        );
        let ratio = (low + high) / (least + most);
        println!(
            "{family}, {key}: trade {low:.0} to {high:.0} g, ours {least:.0} to {most:.0} g, ratio {ratio:.2}; {differs}"
        );
        let meet = low <= most && high >= least;
        assert_eq!(meet, differs.is_empty(), "{family} {key}: ratio {ratio:.2}");
        count += 1;
    }
    assert_eq!(count, 27);
}

/// A forces' recipe card gives a US quart to a 9 by 2 in round: four cups of 8.81, 45 % of its brim, within what is usual.
#[test]
fn a_quart_for_a_nine_inch_round() {
    let round = size("round_9x2").expect("a size").pan;
    let share = Volume::US_CUP * 4.0 / round.brim();
    near(share, 0.454, 0.001);
    let fill = batter_of(Kind::YellowLayer).fill.expect("a usual fill");
    assert!((fill.low.to_fraction()..fill.high.to_fraction()).contains(&share));
}
