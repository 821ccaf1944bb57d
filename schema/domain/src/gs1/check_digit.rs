//! The digits that catch a slip: GS1's check digit, and the verifier of a price or weight.

/// The check digit that belongs after these digits: weights 3 and 1 from the right
/// (`standards` 1.2). `None` if there are none, or something else than digits.
pub fn check_digit(digits: &str) -> Option<u32> {
    let values: Option<Vec<u32>> = digits.chars().map(|digit| digit.to_digit(10)).collect();
    let values = values.filter(|values| !values.is_empty())?;
    let weights = [3, 1].into_iter().cycle();
    let sum: u32 = values
        .iter()
        .rev()
        .zip(weights)
        .map(|(value, weight)| value * weight)
        .sum();
    Some((10 - sum % 10) % 10)
}

/// Whether the last digit is the check digit of the others.
pub fn check_digit_is_right(digits: &str) -> bool {
    let last = digits.len().checked_sub(1);
    let halves = last.and_then(|at| digits.split_at_checked(at));
    halves.is_some_and(|(body, check)| {
        let check = check.chars().next().and_then(|digit| digit.to_digit(10));
        check.is_some() && check == check_digit(body)
    })
}

// What each digit weighs in each column of the standard's table (`standards` 1.2).
const TWO_MINUS: [u32; 10] = [0, 2, 4, 6, 8, 9, 1, 3, 5, 7];
const THREE: [u32; 10] = [0, 3, 6, 9, 2, 5, 8, 1, 4, 7];
const FIVE_PLUS: [u32; 10] = [0, 5, 1, 6, 2, 7, 3, 8, 4, 9];
const FIVE_MINUS: [u32; 10] = [0, 5, 9, 4, 8, 3, 7, 2, 6, 1];

/// The verifier digit of a price or weight of four or five digits (`standards` 1.2); `None` for
/// any other text.
pub fn verifier_digit(value: &str) -> Option<u32> {
    let digits: Option<Vec<u32>> = value.chars().map(|digit| digit.to_digit(10)).collect();
    let digits = digits?;
    let weighed = |columns: &[[u32; 10]]| -> u32 {
        let weights = digits.iter().zip(columns);
        weights.map(|(digit, column)| column[*digit as usize]).sum()
    };
    match digits.len() {
        4 => Some(weighed(&[TWO_MINUS, TWO_MINUS, THREE, FIVE_MINUS]) * 3 % 10),
        5 => {
            let sum = weighed(&[FIVE_PLUS, TWO_MINUS, FIVE_MINUS, FIVE_PLUS, TWO_MINUS]);
            let wanted = (10 - sum % 10) % 10;
            (0..10).find(|digit| FIVE_MINUS[*digit as usize] == wanted)
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn check_digits() {
        // standards 1.2, top table.
        for (body, check) in [
            ("629104150021", 3),
            ("950110153100", 0),
            ("9501234", 6),
            ("123456789012", 8),
            ("1234567890123", 1),
            ("0952123454321", 3),
            ("0952123454322", 0),
            ("0952123454323", 7),
            ("9952123454321", 6),
            ("952123450000", 1),
            ("09521234500000001", 8),
        ] {
            assert_eq!(check_digit(body), Some(check), "{body}");
            assert!(check_digit_is_right(&format!("{body}{check}")), "{body}");
        }
        for bad in [
            "12345673",
            "416000336109",
            "1234567890129",
            "12345678901232",
            "",
            "0",
            "x",
            "12é",
        ] {
            assert!(!check_digit_is_right(bad), "{bad}");
        }
    }

    #[test]
    fn verifiers() {
        // standards 1.2, below the table of weights.
        for (value, verifier) in [
            ("2875", 9),
            ("14685", 6),
            ("0125", 3),
            ("1234", 9),
            ("01250", 7),
            ("12345", 8),
            ("00990", 0),
        ] {
            assert_eq!(verifier_digit(value), Some(verifier), "{value}");
        }
        for other in ["", "123", "123456", "12a4"] {
            assert_eq!(verifier_digit(other), None, "{other}");
        }
    }
}
