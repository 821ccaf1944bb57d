//! Numbers of packs as people read them: `1–4, 7`.

/// Numbers in their order, those in a row as one.
pub fn in_runs(numbers: &[u32]) -> String {
    let runs = numbers.chunk_by(|one, next| one + 1 == *next);
    let told = runs.map(|run| match run {
        [one] => one.to_string(),
        run => format!("{}–{}", run[0], run[run.len() - 1]),
    });
    told.collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::in_runs;

    #[test]
    fn what_is_in_a_row_is_one() {
        assert_eq!(in_runs(&[]), "");
        assert_eq!(in_runs(&[3]), "3");
        assert_eq!(in_runs(&[1, 2, 3, 4, 7, 9, 10]), "1–4, 7, 9–10");
    }
}
