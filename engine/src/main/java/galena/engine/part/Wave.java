package galena.engine.part;

/** What an ideal source does in time. */
public sealed interface Wave {
    /** The value at rest: what it holds when its alternating part is silent. */
    double rest();

    /** The value at a time, seconds. */
    double at(double time);

    /** Hz of the alternating part; zero where there is none. */
    double frequency();

    /** Constant, volts or amperes. */
    record Direct(double value) implements Wave {
        public Direct {
            Require.finite("source", "value", value, "");
        }

        @Override
        public double rest() {
            return value;
        }

        @Override
        public double at(double time) {
            return value;
        }

        @Override
        public double frequency() {
            return 0;
        }
    }

    /**
     * offset + amplitude · sin(2π · frequency · t + phase).
     *
     * @param amplitude peak
     * @param frequency Hz, above zero
     * @param phase radians
     */
    record Sine(double offset, double amplitude, double frequency, double phase) implements Wave {
        public Sine {
            Require.finite("source", "offset", offset, "");
            Require.finite("source", "amplitude", amplitude, "");
            Require.positive("source", "frequency", frequency, "Hz");
            Require.finite("source", "phase", phase, "rad");
        }

        @Override
        public double rest() {
            return offset;
        }

        @Override
        public double at(double time) {
            return offset + amplitude * Math.sin(2 * Math.PI * frequency * time + phase);
        }
    }
}
