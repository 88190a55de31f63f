package galena.bench.capture;

import galena.signal.stream.SampleFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the builder states instead of letting it be guessed; each may be empty.
 *
 * @param kind of capture
 * @param interval time between samples (s)
 * @param format of headerless IQ
 * @param separator between cells of text
 * @param decimal mark in text, {@code '.'} or {@code ','}
 * @param timeColumn column that holds time, from 1; 0 states that none does
 * @param columns columns that hold channels, from 1
 * @param scale factor on every value: volts per code, or a probe ratio that the file leaves out
 * @param centre tuned frequency of an IQ capture (Hz)
 * @param keep how many numbers to keep in memory; the rest is read for its statistics only
 */
public record Overrides(
        Optional<Kind> kind,
        OptionalDouble interval,
        Optional<SampleFormat> format,
        Optional<Character> separator,
        Optional<Character> decimal,
        Optional<Integer> timeColumn,
        List<Integer> columns,
        OptionalDouble scale,
        OptionalDouble centre,
        int keep) {
    /** Eight million numbers: 64 MB. */
    public static final int KEEP = 1 << 23;

    /** Kinds that can be stated. */
    public enum Kind {
        /** One or more real channels: a scope, or a sound card on a receiver's intermediate frequency. */
        WAVEFORM,
        /** In-phase and quadrature. */
        IQ,
        /** Audio that a receiver has already detected. */
        AUDIO,
        /** Frequency against time. */
        LOG
    }

    public Overrides {
        columns = List.copyOf(columns);
        if (interval.isPresent() && !(interval.getAsDouble() > 0 && interval.getAsDouble() < 1e6)) {
            throw new IllegalArgumentException("The interval must be a positive time in seconds");
        }
        if (scale.isPresent() && !(Double.isFinite(scale.getAsDouble()) && scale.getAsDouble() != 0)) {
            throw new IllegalArgumentException("The scale must be a finite number other than 0");
        }
        if (keep < 1024) throw new IllegalArgumentException("At least 1024 numbers must be kept");
        if (timeColumn.orElse(0) < 0 || columns.stream().anyMatch(c -> c < 1)) {
            throw new IllegalArgumentException("Columns are counted from 1");
        }
    }

    /** Nothing is stated. */
    public static Overrides none() {
        return new Overrides(
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                KEEP);
    }

    public Overrides withKind(Kind stated) {
        return new Overrides(
                Optional.of(stated), interval, format, separator, decimal, timeColumn, columns, scale, centre, keep);
    }

    /** @param seconds between samples */
    public Overrides withInterval(double seconds) {
        return new Overrides(
                kind, OptionalDouble.of(seconds), format, separator, decimal, timeColumn, columns, scale, centre, keep);
    }

    public Overrides withFormat(SampleFormat stated) {
        return new Overrides(
                kind, interval, Optional.of(stated), separator, decimal, timeColumn, columns, scale, centre, keep);
    }

    public Overrides withSeparator(char stated) {
        return new Overrides(
                kind, interval, format, Optional.of(stated), decimal, timeColumn, columns, scale, centre, keep);
    }

    public Overrides withDecimal(char stated) {
        return new Overrides(
                kind, interval, format, separator, Optional.of(stated), timeColumn, columns, scale, centre, keep);
    }

    /** @param stated column, from 1; 0 for none */
    public Overrides withTimeColumn(int stated) {
        return new Overrides(
                kind, interval, format, separator, decimal, Optional.of(stated), columns, scale, centre, keep);
    }

    /** @param stated columns, from 1 */
    public Overrides withColumns(List<Integer> stated) {
        return new Overrides(kind, interval, format, separator, decimal, timeColumn, stated, scale, centre, keep);
    }

    public Overrides withScale(double factor) {
        return new Overrides(
                kind,
                interval,
                format,
                separator,
                decimal,
                timeColumn,
                columns,
                OptionalDouble.of(factor),
                centre,
                keep);
    }

    /** @param hertz that the receiver was tuned to */
    public Overrides withCentre(double hertz) {
        return new Overrides(
                kind, interval, format, separator, decimal, timeColumn, columns, scale, OptionalDouble.of(hertz), keep);
    }

    public Overrides withKeep(int numbers) {
        return new Overrides(kind, interval, format, separator, decimal, timeColumn, columns, scale, centre, numbers);
    }
}
