//! Tells the binary when it was built: a machine clock that is earlier cannot be right.

fn main() {
    println!("cargo:rerun-if-env-changed=SOURCE_DATE_EPOCH");
    println!("cargo:rerun-if-changed=src");
    let told = std::env::var("SOURCE_DATE_EPOCH")
        .ok()
        .and_then(|seconds| seconds.parse::<i64>().ok());
    // A build script runs on the builder's machine, outside the one place that owns the clock.
    #[allow(clippy::disallowed_methods)]
    let now = || {
        std::time::SystemTime::now()
            .duration_since(std::time::UNIX_EPOCH)
            .map_or(0, |since| since.as_secs() as i64)
    };
    println!(
        "cargo:rustc-env=GAMBREL_BUILT_AT={}",
        told.unwrap_or_else(now)
    );
}
