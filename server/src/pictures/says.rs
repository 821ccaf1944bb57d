//! What the picture of a family says.

use domain::grams::Grams;
use domain::messages;

messages! {
    /// What stands on the picture of a family.
    PictureSays in "picture" {
        Nothing "nothing",
        Gone "summary-gone" { lots: usize, from: String, to: String },
        Clear "summary-clear" { lots: usize, from: String, to: String, on_hand: usize, weight: Grams },
        Held "summary-held" { lots: usize, from: String, to: String, on_hand: usize, weight: Grams, held: Grams },
        KeyGone "key-gone",
        KeyOnHand "key-on-hand",
        KeyHeld "key-held",
        KeyWeight "key-weight",
        Made "made",
        OnHand "on-hand",
        Since "since" { day: String },
        Group "group" { lots: usize, products: String },
        InPlaces "in-places" { weight: Grams, places: usize },
        InLots "in-lots" { weight: Grams, lots: usize },
        AllGone "all-gone",
        NowAt "now-at",
        Place "place" { place: String, lots: usize },
    }
}
