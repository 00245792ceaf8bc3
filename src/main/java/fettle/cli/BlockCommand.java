package fettle.cli;

import fettle.block.BlocksCsv;
import fettle.block.ReferenceBlock;
import fettle.library.LaboratoryFolder;
import fettle.refusal.InputRefusedException;
import fettle.table.Cell;
import fettle.table.InputFile;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reference blocks and their certificates. */
@Command(
    name = "block",
    sortOptions = false,
    synopsisSubcommandLabel = "add|list|show|withdraw",
    header = "Reference blocks and their certificates.",
    footer = {"", "Example: fettle block add --from blocks.csv"},
    subcommands = {
      BlockCommand.Add.class,
      BlockCommand.ListAll.class,
      BlockCommand.Show.class,
      BlockCommand.Withdraw.class
    })
final class BlockCommand extends GroupCommand {
  BlockCommand(Session session) {
    super(session);
  }

  /** Adds blocks from a file, or one from options. */
  @Command(
      name = "add",
      sortOptions = false,
      header = "Add blocks from a CSV file, or one block from options.",
      footer = {
        "",
        "Example: fettle block add --id B1 --scale HV10 --certified 187.2 --expanded-uncertainty 3.4"
            + " --coverage-factor 2"
      })
  static final class Add implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    @Option(names = "--from", paramLabel = "FILE", description = "Blocks CSV.")
    private String from;

    @Option(names = "--id", paramLabel = "ID", description = "Permanent mark of the block.")
    private String id;

    @Option(names = "--scale", description = "Hardness scale of the certificate.")
    private String scale;

    @Option(names = "--certified", description = "Certified hardness.")
    private String certified;

    @Option(names = "--expanded-uncertainty", description = "U of it, in the scale's unit.")
    private String expandedUncertainty;

    @Option(names = "--coverage-factor", description = "k of U.")
    private String coverageFactor;

    @Option(names = "--non-uniformity", description = "Standard uncertainty between places.")
    private String nonUniformity;

    @Option(names = "--certificate", description = "Certificate number.")
    private String certificate;

    @Option(names = "--certified-by", description = "Laboratory that certified.")
    private String certifiedBy;

    @Option(names = "--certified-on", description = "Date of certification, yyyy-mm-dd.")
    private String certifiedOn;

    @Option(names = "--valid-until", description = "Last day of validity, yyyy-mm-dd.")
    private String validUntil;

    @Option(names = "--reference-machine", description = "Bench machine behind the certificate.")
    private String referenceMachine;

    @Option(
        names = "--u-shared",
        description = "Standard uncertainty shared with its other blocks.")
    private String uShared;

    @Option(names = "--material", description = "Material family.")
    private String material;

    @Option(names = "--role", description = "fit, check, standard or drift.")
    private String role;

    Add(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      List<ReferenceBlock> blocks;
      if (from != null) {
        if (id != null) {
          throw new InputRefusedException(
              "Both --from and --id are given.",
              "the call",
              "a file, or one block by options",
              "leave one out");
        }
        blocks = BlocksCsv.read(InputFile.bytes(session.resolve(from)), from);
      } else {
        blocks = List.of(BlocksCsv.fromOptions(options(), "the call"));
      }
      LaboratoryFolder laboratory = common.open(session);
      var outcome = laboratory.addBlocks(blocks);
      if (common.json()) {
        session
            .out()
            .println(
                JsonOut.object(
                    one ->
                        one.putArray("added", list -> Lists.texts(list, outcome.added()))
                            .putArray("extended", list -> Lists.texts(list, outcome.extended()))
                            .putArray(
                                "unchanged", list -> Lists.texts(list, outcome.unchanged()))));
      } else {
        session.out().println(Lists.counted(outcome.added(), "block", "added"));
        if (!outcome.extended().isEmpty()) {
          session
              .out()
              .println(Lists.counted(outcome.extended(), "block", "given a further certificate"));
        }
        if (!outcome.unchanged().isEmpty()) {
          session
              .out()
              .println(Lists.counted(outcome.unchanged(), "block", "there already, unchanged"));
        }
      }
      return ExitStatus.DONE;
    }

    private Map<String, Cell> options() {
      Map<String, Cell> options = new LinkedHashMap<>();
      put(options, "block", "--id", id);
      put(options, "scale", "--scale", scale);
      put(options, "certified", "--certified", certified);
      put(options, "expanded_uncertainty", "--expanded-uncertainty", expandedUncertainty);
      put(options, "coverage_factor", "--coverage-factor", coverageFactor);
      put(options, "non_uniformity", "--non-uniformity", nonUniformity);
      put(options, "certificate", "--certificate", certificate);
      put(options, "certified_by", "--certified-by", certifiedBy);
      put(options, "certified_on", "--certified-on", certifiedOn);
      put(options, "valid_until", "--valid-until", validUntil);
      put(options, "reference_machine", "--reference-machine", referenceMachine);
      put(options, "u_shared", "--u-shared", uShared);
      put(options, "material", "--material", material);
      put(options, "role", "--role", role);
      return options;
    }

    private static void put(Map<String, Cell> options, String column, String option, String value) {
      if (value != null) {
        options.put(column, Cell.ofOption(option, value));
      }
    }
  }

  /** Lists blocks. */
  @Command(name = "list", sortOptions = false, header = "List the blocks.")
  static final class ListAll implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    ListAll(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      List<ReferenceBlock> blocks = common.open(session).blocks();
      if (common.json()) {
        session
            .out()
            .println(
                JsonOut.array(
                    list -> {
                      for (ReferenceBlock block : blocks) {
                        list.addObject(one -> BlockText.json(one, block));
                      }
                    }));
      } else if (blocks.isEmpty()) {
        session.out().println("No blocks yet. Add some with `fettle block add --from blocks.csv`;");
        session.out().println("`fettle template blocks` prints an empty table to fill in.");
      } else {
        blocks.forEach(block -> BlockText.line(session.out(), block));
      }
      return ExitStatus.DONE;
    }
  }

  /** Shows one block. */
  @Command(name = "show", sortOptions = false, header = "Show one block.")
  static final class Show implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    @Parameters(paramLabel = "ID", description = "Mark of the block.")
    private String id;

    Show(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      ReferenceBlock block = common.open(session).block(id);
      if (common.json()) {
        session.out().println(JsonOut.object(one -> BlockText.json(one, block)));
      } else {
        BlockText.details(session.out(), block);
      }
      return ExitStatus.DONE;
    }
  }

  /** Withdraws a block. */
  @Command(
      name = "withdraw",
      sortOptions = false,
      header = "Withdraw a block from use; lists the dossiers that depend on it.")
  static final class Withdraw implements Callable<Integer> {
    private final Session session;

    @Mixin private CommonOptions common;

    @Parameters(paramLabel = "ID", description = "Mark of the block.")
    private String id;

    @Option(names = "--reason", required = true, paramLabel = "TEXT", description = "Why.")
    private String reason;

    Withdraw(Session session) {
      this.session = session;
    }

    @Override
    public Integer call() {
      List<String> dossiers = common.open(session).withdrawBlock(id, reason);
      if (common.json()) {
        session
            .out()
            .println(
                JsonOut.object(
                    one ->
                        one.put("block", id)
                            .putArray("dossiers", list -> Lists.texts(list, dossiers))));
      } else {
        session.out().println("Block " + id + " is withdrawn.");
        session
            .out()
            .println(
                dossiers.isEmpty()
                    ? "No dossier has readings on it."
                    : "Dossiers with readings on it: " + String.join(", ", dossiers) + ".");
      }
      return ExitStatus.DONE;
    }
  }
}
