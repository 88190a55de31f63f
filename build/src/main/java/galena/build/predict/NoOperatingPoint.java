package galena.build.predict;

import galena.engine.operating.OperatingPoint;

/** The build's circuit has no operating point that could be found; the message names net and part. */
public final class NoOperatingPoint extends Exception {
    private static final long serialVersionUID = 1;

    NoOperatingPoint(OperatingPoint.NotFound notFound) {
        super(notFound.toString());
    }
}
