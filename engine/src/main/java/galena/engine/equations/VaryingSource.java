package galena.engine.equations;

import galena.engine.part.Wave;

/** The alternating part of an ideal source: its departure from rest is added to row {@code plus} and taken from {@code minus}. */
record VaryingSource(String part, int plus, int minus, Wave wave) {
    void add(double time, double share, double[] i) {
        double departure = share * (wave.at(time) - wave.rest());
        i[plus] += departure;
        i[minus] -= departure;
    }

    /** Watts that the departure takes up: row {@code plus} belongs to the branch's current, or to the net fed. */
    double power(double time, double[] x, int offset) {
        return (x[offset + plus] - x[offset + minus]) * (wave.at(time) - wave.rest());
    }
}
