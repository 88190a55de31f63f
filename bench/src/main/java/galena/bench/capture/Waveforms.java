package galena.bench.capture;

import java.util.List;

/**
 * Real channels sampled together.
 *
 * @param interval time between samples of one channel (s); with pairs, between pairs
 * @param start time of the first sample (s), negative before a trigger
 * @param channels in the file's order
 * @param pairs whether each sample is two values, lowest and highest: they alternate
 * @param audio whether this is audio, of a rate that holds no medium-wave carrier
 */
public record Waveforms(double interval, double start, List<Channel> channels, boolean pairs, boolean audio)
        implements Content {
    public Waveforms {
        channels = List.copyOf(channels);
        if (!(interval > 0) || channels.isEmpty()) throw new IllegalArgumentException("A waveform has samples in time");
    }
}
