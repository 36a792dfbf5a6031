//! Chance from a seed, the same on every machine.

/// SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).
#[derive(Clone)]
pub struct Chance(pub u64);

impl Chance {
    /// A number in 0..1.
    pub fn unit(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Whether something of this probability happens.
    pub fn happens(&mut self, p: f64) -> bool {
        self.unit() < p
    }

    /// A place in a list of weights, each in proportion.
    pub fn among(&mut self, weights: impl Iterator<Item = f64> + Clone) -> usize {
        let total: f64 = weights.clone().sum();
        let mut left = self.unit() * total;
        let mut last = 0;
        for (i, w) in weights.enumerate() {
            if w > 0.0 {
                last = i;
                if left < w {
                    return i;
                }
                left -= w;
            }
        }
        last
    }
}
