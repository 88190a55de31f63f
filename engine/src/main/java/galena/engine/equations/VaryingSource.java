package galena.engine.equations;

import galena.engine.part.Wave;

/** The alternating part of an ideal source: its departure from rest is added to row {@code plus} and taken from {@code minus}. */
record VaryingSource(int plus, int minus, Wave wave) {
    void add(double time, double[] i) {
        double departure = wave.at(time) - wave.rest();
        i[plus] += departure;
        i[minus] -= departure;
    }
}
