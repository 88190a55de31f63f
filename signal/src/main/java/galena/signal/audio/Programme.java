package galena.signal.audio;

import java.io.IOException;

/** Two channels of sound that are read in blocks. */
public interface Programme {
    /** Frames per second, Hz. */
    double rate();

    /** Frames in all; −1 where that is not known. */
    long length();

    /**
     * Reads on; full scale is 1.
     *
     * @param left written
     * @param right written; the same as left where there is one channel
     * @param most frames wanted
     * @return frames read; 0 at the end
     */
    int read(double[] left, double[] right, int most) throws IOException;
}
