package galena.packet.sheet;

import galena.packet.sheet.PartsList.Line;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The parts list for a spreadsheet: RFC 4180, with the mark by which spreadsheets know UTF-8. */
public final class PartsCsv {
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private PartsCsv() {}

    public static String of(Findings findings) {
        StringBuilder out = new StringBuilder().append(BYTE_ORDER_MARK);
        try (CSVPrinter csv = new CSVPrinter(out, CSVFormat.RFC4180)) {
            csv.printRecord("part", "value", "tolerance", "type", "why", "instead");
            for (Line line : PartsList.of(findings))
                csv.printRecord(
                        line.reference(), line.value(), line.tolerance(), line.type(), line.why(), line.instead());
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible); // it is written to memory
        }
        return out.toString();
    }
}
