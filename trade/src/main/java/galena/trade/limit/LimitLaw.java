package galena.trade.limit;

/** A limit or a distance as a function of frequency, in the printed unit. */
sealed interface LimitLaw {
    /** Value in the printed unit at a frequency (Hz). */
    double at(double frequency);

    record Constant(double value) implements LimitLaw {
        @Override
        public double at(double frequency) {
            return value;
        }
    }

    /** a/f, f in kHz. */
    record OverKilohertz(double a) implements LimitLaw {
        @Override
        public double at(double frequency) {
            return a / (frequency / 1e3);
        }
    }

    /** a + b·log10(f/f0), in decibels. */
    record Logarithmic(double a, double b, double reference) implements LimitLaw {
        @Override
        public double at(double frequency) {
            return a + b * Math.log10(frequency / reference);
        }
    }

    /** a·f, f in GHz, at most {@code most}. */
    record TimesGigahertz(double a, double most) implements LimitLaw {
        @Override
        public double at(double frequency) {
            return Math.min(most, a * frequency / 1e9);
        }
    }

    /** Reads the words of the table of rules. */
    static LimitLaw of(String words) {
        String[] w = words.split(" ");
        if (w.length == 1) return new Constant(Double.parseDouble(w[0]));
        double a = Double.parseDouble(w[1]);
        return switch (w[0]) {
            case "constant" -> new Constant(a);
            case "over_khz" -> new OverKilohertz(a);
            case "log" -> new Logarithmic(a, Double.parseDouble(w[2]), Double.parseDouble(w[3]));
            case "times_ghz" -> new TimesGigahertz(a, Double.parseDouble(w[2]));
            default -> throw new IllegalArgumentException("no law is called \"" + w[0] + "\"");
        };
    }
}
