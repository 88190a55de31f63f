package galena.build.wiring;

import galena.engine.part.Part;

/** Specimens of a device as its sheet allows them, by numbers from the unit cube. */
public interface Draw {
    /** How many numbers a specimen takes. */
    int numbers();

    /** What number k stands for: "gain". */
    String name(int k);

    /** The specimen of u[at], u[at + 1], … */
    Part at(double[] u, int at);
}
