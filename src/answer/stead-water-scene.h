/* stead-water-scene.h - who shares a water, and how a test of it is judged.
 *
 * The same code judges the last test on file and a test that is being typed.  A
 * reading is never called safe: it passes a limit that is known here, or it does
 * not.
 */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-farm-repo.h"
#include "store/stead-water-repo.h"

G_BEGIN_DECLS

/* What all readings of a water are judged by. */
typedef struct
{
  SteadWaterSharers  sharers;
  gboolean           planted;
  gboolean           assumed;          /* no fish are entered: judged as for warm-water fish */
  char              *unknown_species;  /* (nullable): fish that core does not know, judged as warm-water fish */
  double             elevation_m;
  double             salinity_g_kg;
  SteadUnitSystem    units;
  double             chloride_mgl;     /* last known; NAN: never tested */
  SteadDay           chloride_day;
} SteadWaterScene;

void     stead_water_scene_clear (SteadWaterScene *scene);
gboolean stead_water_scene_read  (SteadStore       *store,
                                  const SteadWater *water,
                                  SteadWaterScene  *out,
                                  GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* One measure of a test; un-ionized ammonia and the share of oxygen are worked out. */
typedef struct
{
  SteadWaterMeasure    measure;
  double               value;       /* NAN: not read, or not to be worked out */
  SteadWaterJudgement  judgement;
} SteadWaterLine;

/**
 * stead_water_judge_test:
 * @scene: what the readings are judged by
 * @test: readings; NAN is a gap
 * @lines: (out) (array fixed-size=13): all of them, in core's order
 *
 * Chloride of an earlier test counts for nitrite if this one has none.
 */
void        stead_water_judge_test     (const SteadWaterScene *scene,
                                        const SteadWaterTest  *test,
                                        SteadWaterLine         lines[STEAD_N_WATER_MEASURES]);

/* Those to be watched or acted on, the worst first: (transfer full) (element-type
 * SteadWaterLine), pointing into @lines. */
GPtrArray  *stead_water_worst_lines    (const SteadWaterLine *lines) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full) (nullable): what to do first about them, plain */
char       *stead_water_todo           (const SteadWaterLine *lines) G_GNUC_WARN_UNUSED_RESULT;

/* What a test says of one measure; NAN if it cannot be told. */
double      stead_water_value          (const SteadWaterScene *scene,
                                        const SteadWaterTest  *test,
                                        SteadWaterMeasure      measure);

/* (transfer none): "Un-ionized ammonia" */
const char *stead_water_measure_name   (SteadWaterMeasure measure);
/* (transfer none): "channel catfish", "plants" */
const char *stead_water_sharer_name    (SteadWaterSharers whose);
/* (transfer full): "Judged for channel catfish, plants, and the bacteria of the filter." */
char       *stead_water_scene_sentence (const SteadWaterScene *scene) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full): "FAO Technical Paper 589, …, tables 3.1, 3.2" */
char       *stead_water_source_text    (SteadSource source) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): "0.08 mg/L", "76.5 °F", "84%"; "–" for NAN */
char       *stead_water_value_text     (SteadWaterMeasure measure,
                                        double            value,
                                        SteadUnitSystem   units) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full): one sentence: the reading, the limit, whose it is, and its source */
char       *stead_water_line_sentence  (const SteadWaterLine *line,
                                        SteadUnitSystem       units) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full): the same shorter, for beside a field: "act: harm begins above 0.05 mg/L" */
char       *stead_water_line_short     (const SteadWaterLine *line,
                                        SteadUnitSystem       units) G_GNUC_WARN_UNUSED_RESULT;
/**
 * stead_water_reading_short:
 * @lines: of one test, see stead_water_judge_test()
 * @reading: the field that is spoken of
 * @out_verdict: (out): the worst of what the reading tells: total ammonia also tells
 *   its poisonous part, oxygen its share of what the water holds
 *
 * Returns: (transfer full): for under the field: "Un-ionized 0.082 mg/L. Act: …"; empty
 *   if it was not read
 */
char       *stead_water_reading_short  (const SteadWaterLine *lines,
                                        SteadReading          reading,
                                        SteadUnitSystem       units,
                                        SteadWaterVerdict    *out_verdict) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer none) (nullable): what to do first; %NULL for nothing */
const char *stead_water_action_steps   (SteadWaterAction action);
/* (transfer none): "act", "watch", "no limit passed", "no limit known", "not measured" */
const char *stead_water_verdict_word   (const SteadWaterLine *line);

G_END_DECLS
