//! The taps of a finger, counted.

/// How often a finger touched the screen since it was last asked.
#[derive(Default)]
pub(super) struct Taps(u32);

impl Taps {
    /// One more.
    pub(super) fn tap(&mut self) {
        self.0 += 1;
    }

    /// So many they are to be; counting begins anew.
    #[track_caller]
    pub(super) fn are(&mut self, wanted: u32) {
        assert_eq!(std::mem::take(&mut self.0), wanted, "taps");
    }
}
