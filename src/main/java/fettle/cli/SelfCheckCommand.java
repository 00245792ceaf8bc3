package fettle.cli;

import fettle.selfcheck.CheckedCase;
import fettle.selfcheck.CheckedValue;
import fettle.selfcheck.SelfCheck;
import java.io.IOException;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Recomputes published cases on this machine. */
@Command(
    name = "self-check",
    sortOptions = false,
    header = "Recompute published reference cases on this machine.",
    description = {
      "",
      "Prints for each value what its source prints, what this machine computes, to how many digits",
      "the two agree, and whether the computed value rounds to the printed one (values of a",
      "simulation: whether it lies within chance). Ends with status 1 if one does not."
    })
final class SelfCheckCommand implements Callable<Integer> {
  private final Session session;

  @Mixin private CommonOptions common;

  SelfCheckCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() {
    List<CheckedCase> cases = SelfCheck.run(session.processors());
    boolean passed = cases.stream().allMatch(CheckedCase::passed);
    if (common.json()) {
      session.out().println(json(cases, passed));
    } else {
      cases.forEach(this::print);
      session.out().println(summary(cases));
    }
    return passed ? ExitStatus.DONE : ExitStatus.NEGATIVE;
  }

  private void print(CheckedCase one) {
    PrintStream out = session.out();
    out.println(one.title());
    out.println("  " + one.source());
    for (CheckedValue value : one.values()) {
      out.println(
          String.format(
              Locale.ROOT,
              "  %-34s printed %-22s got %-24s %4.1f digits  %s",
              value.quantity(),
              value.printed() + value.within().map(w -> " ± " + w).orElse(""),
              value.got(),
              value.digits(),
              value.passed() ? "ok" : "DIFFERS"));
    }
    out.println();
  }

  private static String summary(List<CheckedCase> cases) {
    long values = cases.stream().mapToLong(one -> one.values().size()).sum();
    long missed =
        cases.stream().flatMap(one -> one.values().stream()).filter(v -> !v.passed()).count();
    return values
        + " published values of "
        + cases.size()
        + " cases: "
        + (missed == 0
            ? "all met."
            : missed + " not met. Do not rely on numbers computed on this machine.");
  }

  private static String json(List<CheckedCase> cases, boolean passed) {
    return JsonOut.object(
        json ->
            json.put("passed", passed)
                .putArray(
                    "cases",
                    list -> {
                      for (CheckedCase one : cases) {
                        list.addObject(entry -> write(entry, one));
                      }
                    }));
  }

  private static void write(JsonOut json, CheckedCase one) throws IOException {
    json.put("id", one.id())
        .put("title", one.title())
        .put("source", one.source())
        .put("passed", one.passed())
        .putArray(
            "values",
            list -> {
              for (CheckedValue value : one.values()) {
                list.addObject(
                    entry ->
                        entry
                            .put("quantity", value.quantity())
                            .put("printed", value.printed())
                            .put("within", value.within())
                            .put("got", value.got())
                            .put("digits", value.digits())
                            .put("passed", value.passed()));
              }
            });
  }
}
