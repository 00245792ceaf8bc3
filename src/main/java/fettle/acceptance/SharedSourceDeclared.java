package fettle.acceptance;

import fettle.calibration.BlockResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Blocks certified on one machine share its error, which no residual shows. */
final class SharedSourceDeclared extends StatedCheck {
  SharedSourceDeclared() {
    super(
        new Statement(
            "shared-source-declared",
            Severity.STOPS_RELEASE,
            "Is the uncertainty that blocks share through one reference machine declared?",
            "An error of the machine shifts all its blocks together: the fit looks perfect and the"
                + " curve is wrong by the whole of it, so it must be entered as shared.",
            "Ask the certifying laboratory which part of U comes from the machine, indenter and"
                + " chain, and state it as u_shared for every block of that machine.",
            "derived: a common error of all certified values leaves the residuals unchanged (JCGM"
                + " 100:2008, F.1.2.3 on correlated inputs, from memory)"));
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    Map<String, List<BlockResponse>> byMachine = new LinkedHashMap<>();
    List<Finding> findings = new ArrayList<>();
    for (BlockResponse block : SubjectBlocks.of(evidence)) {
      if (block.certificate().referenceMachine().isEmpty()) {
        findings.add(
            missing()
                .on(block)
                .saying(
                    "Block "
                        + block.block().id()
                        + ": its reference machine is not stated, so it cannot be known what it"
                        + " shares with others; fill the columns reference_machine and u_shared."));
      } else {
        byMachine
            .computeIfAbsent(block.certificate().referenceMachine().get(), m -> new ArrayList<>())
            .add(block);
      }
    }
    byMachine.forEach((machine, blocks) -> findings.add(ask(machine, blocks)));
    return findings;
  }

  private Finding ask(String machine, List<BlockResponse> blocks) {
    if (blocks.size() == 1) {
      return passed()
          .on(blocks.get(0))
          .saying(
              "Block "
                  + blocks.get(0).block().id()
                  + " is the only one certified on machine "
                  + machine
                  + " and shares nothing through it.");
    }
    List<BlockResponse> undeclared =
        blocks.stream().filter(b -> b.certificate().sharedUncertainty().isEmpty()).toList();
    List<BlockResponse> zero =
        blocks.stream().filter(b -> b.certificate().sharedUncertainty().orElse(1) == 0).toList();
    String shared = blocks.size() + " blocks were certified on machine " + machine;
    if (!zero.isEmpty()) {
      return failed()
          .on(zero.get(0))
          .saying(
              shared
                  + ", but u_shared is stated as 0 for "
                  + SubjectBlocks.ids(zero)
                  + "; a machine without any error of its own does not exist.");
    }
    if (!undeclared.isEmpty()) {
      return missing()
          .on(undeclared.get(0))
          .saying(
              shared
                  + ", but "
                  + SubjectBlocks.ids(undeclared)
                  + (undeclared.size() == 1 ? " states" : " state")
                  + " no u_shared; give the machine's part of the standard uncertainty in the"
                  + " column u_shared.");
    }
    double smallest = Double.POSITIVE_INFINITY;
    double largest = 0;
    for (BlockResponse block : blocks) {
      double u = block.certificate().sharedUncertainty().orElseThrow();
      smallest = Math.min(smallest, u);
      largest = Math.max(largest, u);
    }
    return passed()
        .saying(
            shared
                + " and declare what they share: u_shared "
                + Figure.of(smallest, 2)
                + " to "
                + Figure.of(largest, 2)
                + " "
                + blocks.get(0).certificate().scale()
                + ".");
  }
}
