package galena.desk.writing;

/** A sum done at the bench, as JSON; the shape is {@code galena/schema/sum.json}. */
public final class SumJson {
    private SumJson() {}

    public static String of(Sum sum) {
        return Json.document("sum", json -> json.text("title", sum.title())
                .figures("figures", sum.figures())
                .texts("remarks", sum.remarks()));
    }
}
