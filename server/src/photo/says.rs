//! What is said of a photo in which nothing can be read.

use domain::messages;

messages! {
    /// Why a photo is not read.
    PhotoSays in "photo" {
        NoCode "no-code",
        NotRead "not-read",
        TooManyDots "too-many-dots" { most: usize },
        TooLarge "too-large" { most: usize },
        Send "send",
    }
}
