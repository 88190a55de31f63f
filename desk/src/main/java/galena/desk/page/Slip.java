package galena.desk.page;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The answer of long work, as it is pasted into the notebook.
 *
 * @param title what was asked
 * @param lead the answer in a sentence
 * @param tables in order
 * @param drawings SVG that stands alone, by name
 * @param links files of the packet
 * @param notes what else should be known
 * @param build folder of a proposed build beside the present one; empty for none
 * @param sounds to be played one beside the other; empty or two
 * @param strips readings to be drawn over what is predicted of them
 */
record Slip(
        String title,
        String lead,
        List<Table> tables,
        List<Drawing> drawings,
        List<String> links,
        List<String> notes,
        Optional<String> build,
        List<Sound> sounds,
        List<Strip> strips) {
    Slip {
        tables = List.copyOf(tables);
        drawings = List.copyOf(drawings);
        links = List.copyOf(links);
        notes = List.copyOf(notes);
        sounds = List.copyOf(sounds);
        strips = List.copyOf(strips);
    }

    Slip(
            String title,
            String lead,
            List<Table> tables,
            List<Drawing> drawings,
            List<String> links,
            List<String> notes) {
        this(title, lead, tables, drawings, links, notes, Optional.empty(), List.of(), List.of());
    }

    Slip proposing(String folder) {
        return new Slip(title, lead, tables, drawings, links, notes, Optional.of(folder), sounds, strips);
    }

    Slip sounding(List<Sound> heard) {
        return new Slip(title, lead, tables, drawings, links, notes, build, heard, strips);
    }

    Slip drawing(List<Strip> readings) {
        return new Slip(title, lead, tables, drawings, links, notes, build, sounds, readings);
    }

    /**
     * @param title above it
     * @param head of the columns
     * @param rows each as many cells as the head
     */
    record Table(String title, List<String> head, List<List<String>> rows) {
        Table {
            head = List.copyOf(head);
            rows = List.copyOf(rows);
        }
    }

    record Drawing(String name, String caption, String svg) {}

    /**
     * @param name "sent" or "heard"
     * @param caption what it is, in words
     * @param file WAV of one channel, in the cache
     */
    record Sound(String name, String caption, Path file) {}
}
