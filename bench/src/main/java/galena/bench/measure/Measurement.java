package galena.bench.measure;

import galena.bench.capture.Capture;
import galena.bench.capture.Content;
import galena.bench.capture.FrequencyLog;
import galena.bench.capture.IqRecord;
import galena.bench.capture.Note;
import galena.bench.capture.OnePort;
import galena.bench.capture.Understanding;
import galena.bench.capture.Waveforms;

/** Chooses the measures that fit what a capture holds. */
final class Measurement {
    private Measurement() {}

    static Report of(Capture capture, Expected expected) {
        Sheet sheet = new Sheet(expected.quantity().toString());
        carryOver(capture.understanding(), sheet);
        Content content = capture.content();
        if (content instanceof IqRecord iq) new RfMeasurement(sheet, expected, capture.understanding()).iq(iq);
        else if (content instanceof FrequencyLog log) LogMeasurement.into(sheet, log, expected);
        else if (content instanceof OnePort sweep) SweepMeasurement.into(sheet, sweep);
        else if (content instanceof Waveforms waves) waveforms(waves, sheet, expected, capture.understanding());
        return sheet.report(capture.name(), capture.understanding());
    }

    private static void waveforms(Waveforms waves, Sheet sheet, Expected expected, Understanding understanding) {
        boolean holdsCarrier =
                expected.carrier().isPresent() && expected.carrier().getAsDouble() < 0.5 / waves.interval();
        if (waves.audio() && !holdsCarrier) AudioMeasurement.into(sheet, waves, expected);
        else if (waves.pairs()) PairsMeasurement.into(sheet, waves);
        else new RfMeasurement(sheet, expected, understanding).waveforms(waves);
    }

    /** What the reader noted about the file matters to whoever reads the figures. */
    private static void carryOver(Understanding understanding, Sheet sheet) {
        for (Note note : understanding.notes()) {
            sheet.find(
                    switch (note.kind()) {
                        case CLIPPED -> Finding.Kind.CLIPPED;
                        case DROPPED_SAMPLES -> Finding.Kind.DROPPED_SAMPLES;
                        case ROUNDED_STAMPS -> Finding.Kind.ROUNDED_STAMPS;
                        case MIN_MAX_PAIRS -> Finding.Kind.MIN_MAX_PAIRS;
                        case PARTLY_KEPT, SEGMENTS -> Finding.Kind.PARTLY_USED;
                        case GUESSED, ROWS_SKIPPED, CONTRADICTION, PROBE -> Finding.Kind.UNDERSTANDING;
                    },
                    note.sentence());
        }
    }
}
