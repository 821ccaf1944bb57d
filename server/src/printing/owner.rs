//! Who this process is, so that the lease of one that was killed need not run out first.

use chrono::{DateTime, Utc};

/// A process that talks to printers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Owner {
    /// The running kernel and its space of process numbers; empty where that cannot be known.
    kernel: String,
    pid: u32,
    /// When it began, in microseconds: a number may be given to another process.
    since: i64,
}

impl Owner {
    /// This process, which begins now.
    pub fn myself(now: DateTime<Utc>) -> Owner {
        let boot = std::fs::read_to_string("/proc/sys/kernel/random/boot_id");
        let space = std::fs::read_link("/proc/self/ns/pid");
        let kernel = match (boot, space) {
            (Ok(boot), Ok(space)) => format!("{}-{}", boot.trim(), space.display()),
            _ => String::new(),
        };
        Owner {
            kernel,
            pid: std::process::id(),
            since: now.timestamp_micros(),
        }
    }

    /// Is the owner written there certainly gone? That can only be known of a process under the same kernel.
    pub fn sees_gone(&self, other: &str) -> bool {
        let mut parts = other.rsplitn(3, '/');
        let since = parts.next().and_then(|since| since.parse::<i64>().ok());
        let pid = parts.next().and_then(|pid| pid.parse::<u32>().ok());
        let (Some(since), Some(pid), Some(kernel)) = (since, pid, parts.next()) else {
            return false;
        };
        if self.kernel.is_empty() || kernel != self.kernel {
            return false;
        }
        match pid == self.pid {
            true => since != self.since,
            false => !std::path::Path::new("/proc").join(pid.to_string()).exists(),
        }
    }
}

impl std::fmt::Display for Owner {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}/{}/{}", self.kernel, self.pid, self.since)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_dead_of_this_kernel_are_known_to_be_gone() {
        let me = Owner {
            kernel: "boot-pid:[1]".into(),
            pid: std::process::id(),
            since: 5,
        };
        let other = |kernel: &str, pid: u32, since: i64| format!("{kernel}/{pid}/{since}");
        assert!(!me.sees_gone(&me.to_string()));
        assert!(me.sees_gone(&other("boot-pid:[1]", me.pid, 4)));
        // Above the highest number that Linux gives out (4,194,304).
        assert!(me.sees_gone(&other("boot-pid:[1]", 4_194_305, 4)));
        assert!(!me.sees_gone(&other("boot-pid:[2]", 4_194_305, 4)));
        assert!(!me.sees_gone("nonsense"));
        let unknown = Owner {
            kernel: String::new(),
            ..me
        };
        assert!(!unknown.sees_gone(&other("", 4_194_305, 4)));
    }
}
