package fettle.cli;

import fettle.calibration.Dossier;
import fettle.curve.CurveIdentity;
import fettle.library.LaboratoryFolder;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import fettle.table.InputFile;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Dossiers: one for each material, scale and instrument. */
@Command(
    name = "dossier",
    sortOptions = false,
    synopsisSubcommandLabel = "new|list|show",
    header = "Dossiers: one for each material, scale and instrument.",
    footer = {
      "",
      "Example: fettle dossier new bronze-hv10 --method uci --scale HV10 --material \"cast bronze\""
    },
    subcommands = {
      DossierCommand.New.class,
      DossierCommand.ListAll.class,
      DossierCommand.Show.class
    })
final class DossierCommand extends GroupCommand {
  DossierCommand(Session session) {
    super(session);
  }

  private static void json(JsonOut json, Dossier dossier) throws IOException {
    CurveIdentity identity = dossier.identity();
    json.put("dossier", identity.dossier())
        .put("title", identity.title())
        .put("method", identity.method().id())
        .put("scale", identity.scale().symbol())
        .put("material", identity.material())
        .put("response", identity.responseKind().id())
        .put("testForceNewtons", identity.testForceNewtons())
        .put("instrument", identity.instrument())
        .put("probe", identity.probe())
        .put("zeroFrequencyHz", identity.zeroFrequencyHz())
        // Released versions come with review; a draft is no version.
        .putArray("versions", list -> {});
  }

  /** Makes a dossier. */
  @Command(
      name = "new",
      sortOptions = false,
      header = "Begin a dossier.",
      footer = {
        "",
        "NAME is also the folder's name: lower-case letters, digits and hyphens, at most 63."
      })
  static final class New implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    @Parameters(paramLabel = "NAME", description = "Name of the dossier and its curve.")
    private String name;

    @Option(
        names = "--method",
        required = true,
        paramLabel = "uci|rebound",
        description = "Measuring principle.")
    private String method;

    @Option(names = "--scale", required = true, description = "Hardness scale, such as HV10.")
    private String scale;

    @Option(
        names = "--material",
        required = true,
        paramLabel = "TEXT",
        description = "Material family.")
    private String material;

    @Option(names = "--title", paramLabel = "TEXT", description = "Free text.")
    private String title;

    @Option(names = "--test-force", paramLabel = "N", description = "Probe's test force, newtons.")
    private String testForce;

    @Option(names = "--instrument", paramLabel = "TEXT", description = "Instrument.")
    private String instrument;

    @Option(names = "--probe", paramLabel = "TEXT", description = "Probe or impact device.")
    private String probe;

    @Option(
        names = "--response",
        paramLabel = "KIND",
        description = "frequency-shift, rebound-ratio or indicated-hardness.")
    private String response;

    @Option(
        names = "--zero-frequency",
        paramLabel = "HZ",
        description = "Zero frequency that displayed shifts refer to.")
    private String zeroFrequency;

    @Option(names = "--policy", paramLabel = "FILE", description = "Limits, targets, components.")
    private String policy;

    New(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      Method principle = Method.parse(method, "option --method");
      CurveIdentity identity =
          new CurveIdentity(
              name,
              Optional.ofNullable(title),
              material,
              principle,
              HardnessScale.parse(scale, "option --scale"),
              response == null
                  ? ResponseKind.usualOf(principle)
                  : ResponseKind.parse(response, "option --response"),
              number("--test-force", testForce),
              Optional.ofNullable(instrument),
              Optional.ofNullable(probe),
              number("--zero-frequency", zeroFrequency));
      Optional<byte[]> policyBytes =
          Optional.ofNullable(policy).map(file -> InputFile.bytes(session.resolve(file)));
      LaboratoryFolder laboratory = common.open(session);
      laboratory.createDossier(identity, policyBytes, policy);
      if (common.json()) {
        Dossier made = laboratory.dossier(name);
        session.out().println(JsonOut.object(one -> json(one, made)));
      } else {
        session.out().println("Dossier " + name + " is begun.");
        session
            .out()
            .println(
                "Next: add blocks with `fettle block add`, then readings with `fettle readings add "
                    + name
                    + " FILE.csv`.");
      }
      return ExitStatus.DONE;
    }

    private static OptionalDouble number(String option, String text) {
      if (text == null) {
        return OptionalDouble.empty();
      }
      return OptionalDouble.of(fettle.table.Cell.ofOption(option, text).positive());
    }
  }

  /** Lists dossiers. */
  @Command(name = "list", sortOptions = false, header = "List the dossiers.")
  static final class ListAll implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    ListAll(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      LaboratoryFolder laboratory = common.open(session);
      List<Dossier> dossiers = laboratory.dossiers().stream().map(laboratory::dossier).toList();
      if (common.json()) {
        session
            .out()
            .println(
                JsonOut.array(
                    list -> {
                      for (Dossier dossier : dossiers) {
                        list.addObject(one -> json(one, dossier));
                      }
                    }));
      } else if (dossiers.isEmpty()) {
        session
            .out()
            .println("No dossiers yet. Begin one with `fettle dossier new NAME …`, or look");
        session.out().println("at an invented laboratory with `fettle demo`.");
      } else {
        for (Dossier dossier : dossiers) {
          CurveIdentity identity = dossier.identity();
          session
              .out()
              .println(
                  "  "
                      + identity.dossier()
                      + "   "
                      + identity.method().id()
                      + ", "
                      + identity.scale()
                      + ", "
                      + identity.material());
        }
      }
      return ExitStatus.DONE;
    }
  }

  /** Shows one dossier and the next step. */
  @Command(name = "show", sortOptions = false, header = "Show one dossier and the next step.")
  static final class Show implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    @Parameters(paramLabel = "NAME", description = "Name of the dossier.")
    private String name;

    Show(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      LaboratoryFolder laboratory = common.open(session);
      Dossier dossier = laboratory.dossier(name);
      var campaign = laboratory.campaign(name);
      boolean draft = laboratory.hasDraft(name);
      String next = nextStep(campaign.readings().isEmpty(), draft);
      if (common.json()) {
        session
            .out()
            .println(
                JsonOut.object(
                    one -> {
                      json(one, dossier);
                      one.put("readings", campaign.readings().size())
                          .put("excluded", campaign.exclusions().size())
                          .put("draft", draft)
                          .put("next", next);
                    }));
        return ExitStatus.DONE;
      }
      CurveIdentity identity = dossier.identity();
      session.out().println(name + identity.title().map(text -> ": " + text).orElse(""));
      session.out().println("  material    " + identity.material());
      session
          .out()
          .println(
              "  method      "
                  + identity.method().title()
                  + ", "
                  + identity.responseKind().title()
                  + " to "
                  + identity.scale());
      identity.probe().ifPresent(text -> session.out().println("  probe       " + text));
      session
          .out()
          .println(
              "  readings    "
                  + campaign.readings().size()
                  + " on "
                  + campaign.blocks().size()
                  + " blocks, "
                  + campaign.exclusions().size()
                  + " left out");
      session.out().println("  policy      " + dossier.policy().title());
      session.out().println("  draft       " + (draft ? "kept" : "none"));
      session.out().println("Next: " + next);
      return ExitStatus.DONE;
    }

    private String nextStep(boolean noReadings, boolean draft) {
      if (noReadings) {
        return "add readings with `fettle readings add " + name + " FILE.csv`.";
      }
      return draft
          ? "check the draft with `fettle validate "
              + name
              + "`, then `fettle report "
              + name
              + "`."
          : "look at the readings with `fettle screen "
              + name
              + "`, then `fettle fit "
              + name
              + "`.";
    }
  }
}
