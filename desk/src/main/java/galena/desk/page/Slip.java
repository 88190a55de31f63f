package galena.desk.page;

import java.util.List;

/**
 * The answer of long work, as it is pasted into the notebook.
 *
 * @param title what was asked
 * @param lead the answer in a sentence
 * @param tables in order
 * @param drawings SVG that stands alone, by name
 * @param links files of the packet
 * @param notes what else should be known
 */
record Slip(
        String title, String lead, List<Table> tables, List<Drawing> drawings, List<String> links, List<String> notes) {
    Slip {
        tables = List.copyOf(tables);
        drawings = List.copyOf(drawings);
        links = List.copyOf(links);
        notes = List.copyOf(notes);
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
}
