package galena.desk.writing;

import galena.build.figure.Figure;
import java.util.List;

/**
 * What a sum at the bench came to.
 *
 * @param title what was asked
 * @param figures the answers
 * @param remarks what was taken for granted, and what to do next
 */
public record Sum(String title, List<Figure> figures, List<String> remarks) {
    public Sum {
        figures = List.copyOf(figures);
        remarks = List.copyOf(remarks);
    }
}
