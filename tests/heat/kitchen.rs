//! Batters and loads for the tests.

use batterwright::baking::oven::heat::bake::Load;
use batterwright::baking::oven::heat::mesh::Vessel;
use batterwright::baking::oven::heat::stuff::Batter;
use batterwright::baking::oven::kitchen::skin;
use batterwright::baking::pan::Finish;

/// A batter by the word of a kind of cake: water, fat, carbohydrate, protein and the rest of textbook formulas, and the
/// density that the trade gives (from memory).
pub fn batter(cake: &str) -> Batter {
    let (parts, density) = match cake {
        "pound" => ([0.26, 0.22, 0.445, 0.065, 0.01], 850.0),
        "muffin" => ([0.37, 0.11, 0.44, 0.065, 0.015], 950.0),
        "foam" => ([0.35, 0.08, 0.485, 0.075, 0.01], 480.0),
        _ => ([0.33, 0.13, 0.465, 0.06, 0.015], 850.0),
    };
    Batter {
        parts,
        density,
        activity: 0.93,
    }
}

/// Core temperatures at which it is done, C (common practice, no source).
pub fn core(cake: &str) -> [f64; 3] {
    match cake {
        "pound" => [97.0, 98.0, 99.0],
        "muffin" => [96.0, 97.0, 99.0],
        "foam" => [94.0, 95.0, 97.0],
        _ => [95.0, 97.0, 98.0],
    }
}

/// It in a pan; it grows to what the trade gives for a gram of cake.
pub fn load(batter: Batter, cake: &str, vessel: Vessel, depth: f64, finish: Finish) -> Load {
    let times = match cake {
        "pound" | "foam" => 1.55,
        "muffin" => 1.9,
        _ => 1.95,
    };
    Load {
        batter,
        celsius: 22.0,
        rise: vec![
            [22.0, 1.0],
            [45.0, 1.0 + 0.3 * (times - 1.0)],
            [85.0, times],
        ],
        vessel,
        skin: skin(finish),
        depth,
        vapour: 1.0,
    }
}
