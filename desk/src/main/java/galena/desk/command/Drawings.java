package galena.desk.command;

import galena.desk.console.Terminal;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartSvg;
import galena.packet.chart.Ranking;
import galena.packet.chart.RankingSvg;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes drawings into a folder and says where they are. */
final class Drawings {
    private Drawings() {}

    static void draw(Chart chart, Path folder, String name, Terminal terminal) throws IOException {
        write(ChartSvg.draw(chart), folder, name, terminal);
    }

    static void draw(Ranking ranking, Path folder, String name, Terminal terminal) throws IOException {
        write(RankingSvg.draw(ranking), folder, name, terminal);
    }

    private static void write(String svg, Path folder, String name, Terminal terminal) throws IOException {
        Files.createDirectories(folder);
        Path file = folder.resolve(name);
        Files.writeString(file, svg, StandardCharsets.UTF_8);
        terminal.remark("drawn in " + file);
    }
}
