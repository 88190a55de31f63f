package galena.trade.battery;

import galena.trade.source.DataTable;
import galena.trade.source.PrintedUnit;
import galena.trade.source.Provenance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Reads the table of cells. Rows named quoted_… and …_test are kept for show and play no part. */
final class CellTable {
    private static final double MILLIAMPERE_HOUR = 3.6;

    private CellTable() {}

    static Map<String, Cell> read(DataTable table) {
        Map<String, List<DataTable.Row>> byCell = new LinkedHashMap<>();
        for (DataTable.Row row : table.rows()) {
            byCell.computeIfAbsent(row.text("cell"), name -> new ArrayList<>()).add(row);
        }
        Map<String, Cell> cells = new LinkedHashMap<>();
        byCell.forEach((name, rows) -> cells.put(name, cell(name, rows)));
        return cells;
    }

    private static Cell cell(String name, List<DataTable.Row> rows) {
        List<Cell.CurvePoint> curve = new ArrayList<>();
        List<Cell.Capacity> capacities = new ArrayList<>();
        List<Provenance> sources = new ArrayList<>();
        for (DataTable.Row row : rows) {
            sources.add(row.provenance());
            switch (row.text("quantity")) {
                case "curve" -> curve.add(new Cell.CurvePoint(row.required("x") / 100, row.required("typ")));
                case "capacity" -> capacities.add(capacity(row));
                default -> {}
            }
        }
        capacities.sort(Comparator.comparingDouble(Cell.Capacity::current));
        return new Cell(
                name,
                (int) typical(name, rows, "cells"),
                typical(name, rows, "nominal_voltage"),
                typical(name, rows, "end_voltage"),
                typical(name, rows, "internal_resistance"),
                typical(name, rows, "resistance_growth"),
                curve,
                typical(name, rows, "curve_current"),
                capacities,
                sources);
    }

    private static Cell.Capacity capacity(DataTable.Row row) {
        if (!row.text("unit").equals("mAh")) throw row.fault("unit", "capacity is held in mAh");
        double typical = row.required("typ");
        OptionalDouble low = row.number("min");
        OptionalDouble high = row.number("max");
        String[] at = row.text("at").split(" ");
        double current = at.length == 2 ? PrintedUnit.of(at[1]).toSi(Double.parseDouble(at[0])) : 0;
        return new Cell.Capacity(
                current,
                low.orElse(typical) * MILLIAMPERE_HOUR,
                typical * MILLIAMPERE_HOUR,
                high.orElse(typical) * MILLIAMPERE_HOUR);
    }

    private static double typical(String name, List<DataTable.Row> rows, String quantity) {
        for (DataTable.Row row : rows) {
            if (row.text("quantity").equals(quantity)) return row.required("typ");
        }
        throw new IllegalStateException(name + " has no " + quantity);
    }
}
