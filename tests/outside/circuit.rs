//! A circuit of resistors, solved node by node by a general library (nalgebra's LU).

use nalgebra::{DMatrix, DVector};

/// Resistors between numbered nodes and earth.
pub struct Circuit {
    conductances: DMatrix<f64>,
}

impl Circuit {
    /// So many nodes beside earth, nothing between them.
    pub fn of(nodes: usize) -> Self {
        Self {
            conductances: DMatrix::zeros(nodes, nodes),
        }
    }

    /// A resistor between two nodes, or a node and earth; none at all stands as a thousandth of a millionth of an ohm.
    pub fn link(&mut self, a: usize, b: Option<usize>, ohm: f64) {
        let s = 1.0 / if ohm > 0.0 { ohm } else { 1e-9 };
        let g = &mut self.conductances;
        g[(a, a)] += s;
        if let Some(b) = b {
            g[(b, b)] += s;
            g[(a, b)] -= s;
            g[(b, a)] -= s;
        }
    }

    /// The volts of every node over earth with a current led into the first.
    pub fn volts(self, current: f64) -> Vec<f64> {
        let mut source = DVector::zeros(self.conductances.nrows());
        source[0] = current;
        match self.conductances.lu().solve(&source) {
            Some(volts) => volts.as_slice().to_vec(),
            None => panic!("a circuit without a solution"),
        }
    }
}
