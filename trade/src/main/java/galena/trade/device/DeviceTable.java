package galena.trade.device;

import galena.trade.source.DataTable;
import galena.trade.source.PrintedUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Reads the table of devices: a row per printed quantity, test conditions as "VDS=15 V; VGS=0 V". */
final class DeviceTable {
    private DeviceTable() {}

    private static final class Draft {
        private final Family family;
        private final List<Printed> rows = new ArrayList<>();
        private String availability = "";

        Draft(Family family) {
            this.family = family;
        }
    }

    static List<Device> read(DataTable table) {
        Map<String, Draft> drafts = new LinkedHashMap<>();
        for (DataTable.Row row : table.rows()) {
            Draft draft = drafts.computeIfAbsent(row.text("type"), type -> new Draft(family(row)));
            if (row.text("quantity").equals("availability")) draft.availability = row.text("note");
            else draft.rows.add(printed(row));
        }
        List<Device> devices = new ArrayList<>();
        drafts.forEach(
                (type, draft) -> devices.add(Device.of(new Sheet(type, draft.family, draft.rows, draft.availability))));
        return devices;
    }

    private static Family family(DataTable.Row row) {
        for (Family family : Family.values()) {
            if (family.word().equals(row.text("family"))) return family;
        }
        throw row.fault("family", "\"" + row.text("family") + "\" is no kind of device");
    }

    private static Printed printed(DataTable.Row row) {
        try {
            DeviceQuantity quantity =
                    DeviceQuantity.valueOf(row.text("quantity").toUpperCase(Locale.ROOT));
            PrintedUnit unit = PrintedUnit.of(row.text("unit"));
            if (!unit.base().equals(quantity.unit())) {
                throw row.fault("unit", "\"" + row.text("unit") + "\" does not suit " + quantity.word());
            }
            return new Printed(
                    quantity,
                    si(row.number("min"), unit),
                    si(row.number("typ"), unit),
                    si(row.number("max"), unit),
                    conditions(row.text("at")),
                    row.provenance());
        } catch (IllegalArgumentException e) {
            throw row.fault("quantity", String.valueOf(e.getMessage()));
        }
    }

    private static OptionalDouble si(OptionalDouble printed, PrintedUnit unit) {
        return printed.isPresent() ? OptionalDouble.of(unit.toSi(printed.getAsDouble())) : printed;
    }

    private static Map<String, Double> conditions(String text) {
        Map<String, Double> at = new LinkedHashMap<>();
        if (text.isEmpty()) return at;
        for (String condition : text.split(";")) {
            String[] sides = condition.strip().split("=");
            String[] figure = sides[1].strip().split(" ");
            at.put(sides[0], PrintedUnit.of(figure[1]).toSi(Double.parseDouble(figure[0])));
        }
        return at;
    }
}
