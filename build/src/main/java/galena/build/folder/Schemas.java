package galena.build.folder;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import galena.build.form.Form;
import galena.build.form.Schema;
import java.util.LinkedHashMap;
import java.util.Map;

/** The published JSON Schemas, made from the forms that the reader uses. */
public final class Schemas {
    private static final String ADDRESS = "urn:galena:schema:";

    private Schemas() {}

    /** File name among the resources in {@code galena/schema} to its text. */
    public static Map<String, String> all() {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("build.json", text(BuildForm.BUILD, "A build: one transmitter", "build"));
        all.put("drawer.json", text(Drawer.FORM, "The parts that the builder has", "drawer"));
        all.put("stations.json", text(Station.FORM, "Stations heard", "stations"));
        all.put("log.json", text(LogEntry.FORM, "Readings at the bench", "log"));
        all.put("calibration.json", text(Calibration.FORM, "An accepted calibration", "calibration"));
        return all;
    }

    private static String text(Form form, String title, String name) {
        DefaultIndenter unix = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer =
                new DefaultPrettyPrinter().withObjectIndenter(unix).withArrayIndenter(unix);
        try {
            return new ObjectMapper().writer(printer).writeValueAsString(Schema.of(form, title, ADDRESS + name + ":1"))
                    + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of texts can always be written", e);
        }
    }
}
