package fettle.demo;

import fettle.block.ReferenceBlock;
import fettle.quantity.Method;
import fettle.reading.Reading;
import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The hardness laboratory of an invented propeller foundry, setting up an invented nickel–aluminium
 * bronze family: three heat treatments on HV10 by UCI with 98 N, one of them also on HBW 10/3000 by
 * rebound.
 *
 * <p>Blocks, certificates and readings are simulated from one seed: the same seed gives the same
 * bytes on every platform. Nothing here may be used for parts. This class makes what reaches a
 * laboratory from outside and tells which dossiers it is for; registering it is not its business.
 * Immutable once made.
 *
 * <p>Relative standard deviations: modulus of a block 0.5 % and contact factor 0.5 % (rebound: 0.95
 * %), together about 1 % of the hardness between blocks; shared error of a bench machine 0.8 %,
 * individual 0.6 %; hardness over a face 0.3 %; UCI reading 0.8 %, operator 0.3 %, run 0.35 % of
 * the shift; rebound reading 5.5, operator 2, run 2.5 units. Sizes are common practice, no source.
 */
public final class DemoLaboratory {
  /**
   * The seed of the laboratory that ships. It was chosen among 500 so that the planted faults stand
   * out and nothing else does; a study of coverage takes other seeds, all of them.
   */
  public static final long SHIPPED_SEED = 464;

  private static final String FOLDER = "incoming";

  private final Map<String, Campaign> campaigns;

  private DemoLaboratory(Map<String, Campaign> campaigns) {
    this.campaigns = campaigns;
  }

  /**
   * The laboratory with its planted faults.
   *
   * @param seed any number
   * @return the laboratory
   */
  public static DemoLaboratory withSeed(long seed) {
    return simulated(seed, PlantedFaults.PLANTED);
  }

  /**
   * The laboratory with nothing but chance, for studies over many seeds.
   *
   * @param seed any number
   * @return the laboratory
   */
  public static DemoLaboratory withoutFaults(long seed) {
    return simulated(seed, PlantedFaults.NONE);
  }

  private static DemoLaboratory simulated(long seed, PlantedFaults faults) {
    BlockForge forge = new BlockForge(seed, faults);
    Map<Method, List<SimulatedBlock>> steel = new HashMap<>();
    for (Method method : Method.values()) {
      steel.put(method, forge.steel(method));
    }
    Map<String, PlaceSequence> places = new HashMap<>();
    steel.values().forEach(blocks -> layOut(seed, blocks, places));
    Map<String, Campaign> campaigns = new LinkedHashMap<>();
    for (MemberPlan plan : MemberPlan.all()) {
      List<SimulatedBlock> bronze = forge.bronze(plan);
      layOut(seed, bronze, places);
      campaigns.put(
          plan.name(),
          Campaign.simulated(seed, plan, bronze, steel.get(plan.method()), places, faults));
    }
    return new DemoLaboratory(campaigns);
  }

  private static void layOut(
      long seed, List<SimulatedBlock> blocks, Map<String, PlaceSequence> places) {
    blocks.forEach(block -> places.put(block.block().id(), new PlaceSequence(seed, block)));
  }

  /**
   * The dossiers.
   *
   * @return four, in the order in which they were read
   */
  public List<DemoDossier> dossiers() {
    return campaigns.values().stream().map(Campaign::dossier).toList();
  }

  /**
   * All blocks, each once.
   *
   * @return as they stand in the blocks file
   */
  public List<ReferenceBlock> blocks() {
    Map<String, ReferenceBlock> blocks = new LinkedHashMap<>();
    for (Campaign campaign : campaigns.values()) {
      campaign.bronze().forEach(block -> blocks.put(block.block().id(), block.block()));
      campaign.steel().forEach(block -> blocks.put(block.block().id(), block.block()));
    }
    return List.copyOf(blocks.values());
  }

  /**
   * Readings of the four runs of a dossier.
   *
   * @param dossier its name
   * @return as they stand in the files, in order
   */
  public List<Reading> readings(String dossier) {
    return campaign(dossier).runs().stream().map(SimulatedReading::reading).toList();
  }

  /**
   * Readings of the later reverification of a dossier.
   *
   * @param dossier its name
   * @return as they stand in the file
   */
  public List<Reading> reverification(String dossier) {
    return campaign(dossier).readings(Campaign.REVERIFICATION_FILE);
  }

  /**
   * The truth behind a dossier.
   *
   * @param dossier its name
   * @return true curve and true hardness of its blocks
   */
  public DemoTruth truth(String dossier) {
    return new DemoTruth(campaign(dossier));
  }

  Campaign campaign(String dossier) {
    Campaign campaign = campaigns.get(dossier);
    if (campaign == null) {
      throw new IllegalArgumentException(
          "dossier " + dossier + ": one of " + campaigns.keySet() + " expected");
    }
    return campaign;
  }

  /**
   * Writes the files as a laboratory would receive them: {@code incoming/README.txt}, {@code
   * policy.json}, {@code blocks.csv}, and for each dossier a folder of its name with {@code
   * run-1.csv} to {@code run-4.csv} and {@code reverification-1.csv}.
   *
   * @param folder folder in which {@code incoming} is made; made itself where absent
   * @return the files written
   * @throws IOException where the folder cannot be written
   * @throws InputRefusedException where {@code incoming} is there already; nothing is then written
   */
  public List<Path> writeTo(Path folder) throws IOException {
    Path incoming = folder.resolve(FOLDER);
    if (Files.exists(incoming)) {
      throw new InputRefusedException(
          "The demo data were not written: the folder is there already.",
          incoming.toString(),
          "a folder without \"" + FOLDER + "\"",
          "choose another folder, or move the old one away");
    }
    List<Path> written = new ArrayList<>();
    for (Map.Entry<String, byte[]> file : files().entrySet()) {
      Path path = incoming.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      written.add(Files.write(path, file.getValue()));
    }
    return List.copyOf(written);
  }

  /** Contents of all files by their path below {@code incoming}. */
  Map<String, byte[]> files() throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("README.txt", resource("README.txt"));
    files.put("policy.json", resource("policy.json"));
    files.put("blocks.csv", IncomingCsv.blocks(blocks()).getBytes(StandardCharsets.UTF_8));
    for (Campaign campaign : campaigns.values()) {
      for (String file : campaign.files().keySet()) {
        files.put(
            campaign.plan().name() + "/" + file,
            IncomingCsv.readings(campaign.readings(file)).getBytes(StandardCharsets.UTF_8));
      }
    }
    return files;
  }

  private static byte[] resource(String name) throws IOException {
    try (InputStream stream = DemoLaboratory.class.getResourceAsStream(name)) {
      if (stream == null) {
        throw new IOException("resource " + name + " is missing from the program");
      }
      return stream.readAllBytes();
    }
  }
}
