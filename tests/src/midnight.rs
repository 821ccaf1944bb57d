//! Stories do not begin where one day becomes another.

use chrono::Timelike;

/// A story that begins in the last moments of a day, here (UTC) or in its kitchen (New York, an hour that is
/// full here too), begins when the next one has begun: "yesterday" is to mean the same all through it.
pub(crate) fn wait_out_midnight() {
    loop {
        let now = chrono::Utc::now();
        let last_moments = now.minute() == 59 && now.second() >= 30;
        if !(last_moments && matches!(now.hour(), 23 | 3 | 4)) {
            return;
        }
        std::thread::sleep(std::time::Duration::from_secs(1));
    }
}
