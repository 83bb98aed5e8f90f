//! The axes of a small symmetric matrix.

use super::constants::MOST_PARAMETERS;
use super::rows::Each;

pub(super) type Square = [Each; MOST_PARAMETERS];

/// Pairs of different rows.
const PAIRS: [(usize, usize); 6] = [(0, 1), (0, 2), (0, 3), (1, 2), (1, 3), (2, 3)];
/// Sweeps over all pairs; four or five are enough.
const MOST_SWEEPS: usize = 30;

/// The eigenvalues of a symmetric matrix none of whose eigenvalues is negative, and its eigenvectors as columns: Jacobi's
/// rotations, as in Golub and Van Loan, "Matrix Computations", 8.5 (from memory). Unlike Cholesky's way it needs nothing of
/// the matrix: it may be singular. What is zero off the diagonal stays so, and with it a parameter without data apart.
pub(super) fn eigen(mut matrix: Square) -> (Each, Square) {
    let mut axes = Square::default();
    for (at, axis) in axes.iter_mut().enumerate() {
        axis[at] = 1.0;
    }
    for _ in 0..MOST_SWEEPS {
        let mut is_done = true;
        for (p, q) in PAIRS {
            let size = libm::sqrt(matrix[p][p].abs()) * libm::sqrt(matrix[q][q].abs());
            if matrix[p][q].abs() > 1e-17 * size {
                is_done = false;
                let turn = rotation(&matrix, p, q);
                turn_columns(&mut matrix, p, q, turn);
                turn_rows(&mut matrix, p, q, turn);
                turn_columns(&mut axes, p, q, turn);
            }
        }
        if is_done {
            break;
        }
    }
    let mut values = Each::default();
    for (at, value) in values.iter_mut().enumerate() {
        *value = matrix[at][at].max(0.0);
    }
    (values, axes)
}

/// Cosine and sine of the angle that makes the entry at two rows zero.
fn rotation(matrix: &Square, p: usize, q: usize) -> (f64, f64) {
    let slope = (matrix[q][q] - matrix[p][p]) / (2.0 * matrix[p][q]);
    let tangent = libm::copysign(1.0, slope) / (slope.abs() + libm::hypot(1.0, slope));
    let cosine = 1.0 / libm::sqrt(1.0 + tangent * tangent);
    (cosine, tangent * cosine)
}

fn turn_columns(matrix: &mut Square, p: usize, q: usize, (cosine, sine): (f64, f64)) {
    for row in matrix {
        (row[p], row[q]) = (cosine * row[p] - sine * row[q], sine * row[p] + cosine * row[q]);
    }
}

fn turn_rows(matrix: &mut Square, p: usize, q: usize, (cosine, sine): (f64, f64)) {
    let (of_p, of_q) = (matrix[p], matrix[q]);
    for (at, (a, b)) in of_p.into_iter().zip(of_q).enumerate() {
        matrix[p][at] = cosine * a - sine * b;
        matrix[q][at] = sine * a + cosine * b;
    }
}
