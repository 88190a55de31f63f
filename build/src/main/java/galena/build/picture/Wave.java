package galena.build.picture;

/**
 * A voltage against time.
 *
 * @param name in a word
 * @param time s
 * @param volts V
 */
public record Wave(String name, double[] time, double[] volts) {
    public Wave {
        if (time.length == 0 || volts.length != time.length)
            throw new IllegalArgumentException("a wave has a voltage for each of its moments");
    }
}
