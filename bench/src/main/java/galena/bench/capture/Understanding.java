package galena.bench.capture;

import java.util.List;

/**
 * What was understood of a file.
 *
 * @param layout in words
 * @param encoding of text, or format of numbers
 * @param intervalSource where the time between samples comes from, in words
 * @param intervalError relative error of that time by the way it is written, 95 %: rounding, not the instrument's clock
 * @param read rows or frames read
 * @param skipped rows skipped within and after the data
 * @param heading rows before the data
 * @param notes worth knowing
 */
public record Understanding(
        String layout,
        String encoding,
        String intervalSource,
        double intervalError,
        long read,
        long skipped,
        int heading,
        List<Note> notes) {
    public Understanding {
        notes = List.copyOf(notes);
    }

    /** Whether there is a note of this kind. */
    public boolean has(Note.Kind kind) {
        return notes.stream().anyMatch(n -> n.kind() == kind);
    }
}
