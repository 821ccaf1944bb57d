//! Bars and gaps on whole printer dots, in the middle of their place.

use crate::length::{Area, Dpi, Length};
use crate::placed::Code;
use crate::refusal::{CodeKind, Refusal};

/// A bar code before it has a place.
#[derive(Debug)]
pub(crate) struct Bars {
    pub kind: CodeKind,
    /// What a scanner sends for it.
    pub payload: String,
    /// Bars and gaps as ones and zeros, without the white border.
    pub modules: Vec<u8>,
    /// White left and right of the bars, in modules.
    pub quiet: (i64, i64),
    /// Dots of the thinnest bar that still scans.
    pub fewest_dots: i64,
    /// Dots of the thickest bar that the standard allows, for this number of modules.
    pub most_dots: Option<i64>,
}

impl Bars {
    /// Modules across, white border included.
    pub fn across(&self) -> i64 {
        self.modules.len() as i64 + self.quiet.0 + self.quiet.1
    }

    /// As wide as whole dots allow.
    pub fn place(self, area: Area, dpi: Dpi) -> Result<Code, Refusal> {
        let across = self.across();
        let (left, top) = (dpi.first_dot(area.x), dpi.first_dot(area.y));
        let room = dpi.whole_dots(area.right()) - left;
        let dots = (room / across).min(self.most_dots.unwrap_or(i64::MAX));
        if dots < self.fewest_dots {
            return Err(Refusal::CodeTooLarge {
                code: self.kind,
                payload: self.payload,
                needed: dpi.dots(across * self.fewest_dots),
                had: area.w,
            });
        }
        let left = left + (room - across * dots) / 2;
        let (y, bottom) = (dpi.dots(top), dpi.dots(dpi.whole_dots(area.bottom())));
        let edge = |module: i64| dpi.dots(left + (self.quiet.0 + module) * dots);
        let mut dark = Vec::new();
        let mut at = 0;
        for run in self.modules.chunk_by(|a, b| a == b) {
            let from = at;
            at += run.len() as i64;
            if run[0] == 1 {
                dark.push(Area {
                    x: edge(from),
                    y,
                    w: edge(at) - edge(from),
                    h: bottom - y,
                });
            }
        }
        let x = dpi.dots(left);
        let w: Length = dpi.dots(left + across * dots) - x;
        let bounds = Area {
            x,
            y,
            w,
            h: bottom - y,
        };
        Ok(Code {
            kind: self.kind,
            payload: self.payload,
            bounds,
            dots,
            modules: self.modules.len() as i64,
            dark,
        })
    }
}
