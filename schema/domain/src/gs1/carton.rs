//! Which product a carton holds, by the number on it.

use super::Gtin;

/// The product that a carton's fourteen digits stand for: the one with that very number, else the one
/// of the same item. The first digit of a case's number only gives the size of the case, and the last
/// is computed from the others (`standards` 1.4).
///
/// # Errors
/// Those that it could be: none, or several.
pub fn product_of<T>(
    carton: &str,
    listed: impl IntoIterator<Item = (T, Gtin)>,
) -> Result<T, Vec<T>> {
    let item = |digits: &str| digits.get(1..13).map(str::to_owned);
    let of_carton = item(carton);
    let (exact, alike): (Vec<_>, Vec<_>) = listed
        .into_iter()
        .filter(|(_, gtin)| of_carton.is_some() && item(gtin.as_str()) == of_carton)
        .partition(|(_, gtin)| gtin.as_str() == carton);
    let found = if exact.is_empty() { alike } else { exact };
    let mut found: Vec<T> = found.into_iter().map(|(product, _)| product).collect();
    match found.len() {
        1 => Ok(found.remove(0)),
        _ => Err(found),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(carton: &str, found: Result<&str, &[&str]>) {
        let listed = [
            ("salt", "9521234543213"),
            ("salt-case", "19521234543210"),
            ("butter", "09521234000013"),
            ("butter-again", "09521234000013"),
        ];
        let listed = listed
            .into_iter()
            .filter_map(|(name, digits)| Some((name, Gtin::parse(digits).ok()?)));
        assert_eq!(
            product_of(carton, listed),
            found.map_err(<[&str]>::to_vec),
            "{carton}"
        );
    }

    #[test]
    fn the_very_number_goes_before_the_same_item() {
        check("09521234543213", Ok("salt"));
        check("19521234543210", Ok("salt-case"));
        check("29521234543217", Err(&["salt", "salt-case"]));
        check("59521234000018", Err(&["butter", "butter-again"]));
        check("09521234000013", Err(&["butter", "butter-again"]));
        check("09521234500001", Err(&[]));
        check("", Err(&[]));
    }
}
