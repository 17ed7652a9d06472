/* check-build.c - the topics on lumber, roofs, runs, hoop houses, room, and the bill. */
#include "check.h"

#include "core/stead-bill.h"
#include "core/stead-count.h"
#include "core/stead-cut.h"
#include "core/stead-fill.h"
#include "core/stead-greenhouse.h"
#include "core/stead-hen-house.h"
#include "core/stead-hoop.h"
#include "core/stead-lumber.h"
#include "core/stead-mesh.h"
#include "core/stead-pen-room.h"
#include "core/stead-roof.h"
#include "core/stead-round.h"

#include <math.h>
#include <stdio.h>

static double
counted (gint64 count)
{
  return count == STEAD_COUNT_NONE ? NAN : (double) count;
}

static double
feet (double length_m)
{
  return check_from_base (length_m, "ft");
}

static double
base_or (CheckRow   *row,
         const char *stem,
         const char *unit,
         double      fallback)
{
  return check_has_base (row, stem, unit) ? check_base (row, stem, unit) : fallback;
}

static double
waste_of (CheckRow *row)
{
  return check_frac_or (row, "waste_pct", 0);
}

static gint64
whole (CheckRow   *row,
       const char *name,
       gint64      fallback)
{
  double value = check_number_or (row, name, (double) fallback);

  if (value >= 0 && value <= STEAD_COUNT_MOST && value == floor (value))
    return (gint64) value;
  check_bad_input (row, name);
  return 0;
}

/* housed area, shed capacity, feeder length, perch length, nest boxes, herd water */

static double
group_need (CheckRow   *row,
            const char *head_name,
            const char *each,
            const char *unit)
{
  gsize n = 0;
  const double *head = check_list (row, head_name, &n);
  g_autofree double *need = check_base_list (row, each, unit, &n);
  g_autofree SteadPenGroup *groups = g_new (SteadPenGroup, n);

  for (gsize i = 0; i < n; i++)
    groups[i] = (SteadPenGroup) { head[i], need[i] };
  return stead_pen_need (groups, n);
}

static double
housed_area (CheckRow *row)
{
  return check_from_base (group_need (row, "head", "housed_each", "sqft"), "sqft");
}

static double
yard_area (CheckRow *row)
{
  return check_from_base (group_need (row, "head", "yard_each", "sqft"), "sqft");
}

static const CheckAsk area_asks[] = {
  { "housed_area", "sqft", housed_area },
  { "yard_area", "sqft", yard_area },
  { NULL }
};

static double
capacity (CheckRow *row)
{
  return counted (stead_pen_capacity (check_base (row, "length", "ft") * check_base (row, "width", "ft"),
                                      check_base (row, "housed_each", "sqft")));
}

static const CheckAsk capacity_asks[] = {
  { "head", "count", capacity },
  { NULL }
};

static double
feeder (CheckRow *row)
{
  return feet (group_need (row, "head", "feeder_each", "in"));
}

static const CheckAsk feeder_asks[] = {
  { "length", "ft", feeder },
  { NULL }
};

static double
perch (CheckRow *row)
{
  return feet (group_need (row, "hens", "perch_each", "in"));
}

static const CheckAsk perch_asks[] = {
  { "length", "ft", perch },
  { NULL }
};

static double
nest_boxes (CheckRow *row)
{
  double each = check_number (row, "hens_per_box");
  gint64 hens = whole (row, "hens", 0);

  check_need (row, "hens");
  return each > 0 ? (double) stead_hen_nest_boxes (hens, each) : NAN;
}

static const CheckAsk nest_asks[] = {
  { "boxes", "count", nest_boxes },
  { NULL }
};

static double
herd_water (CheckRow *row)
{
  gsize n = 0;
  const double *head = check_list (row, "head", &n);
  const double *each = check_list (row, "water_each_gal_d", &n);
  g_autofree SteadPenGroup *groups = g_new (SteadPenGroup, n);

  for (gsize i = 0; i < n; i++)
    groups[i] = (SteadPenGroup) { head[i], each[i] };
  return stead_pen_need (groups, n);
}

static const CheckAsk water_asks[] = {
  { "water", "gal/d", herd_water },
  { NULL }
};

/* board feet, dressed lumber size, studs, rafters, purlin rows, sheets, boards */

static double
board_feet (CheckRow *row)
{
  return stead_board_feet ((double) whole (row, "pieces", 1), check_number (row, "thickness_in"),
                           check_number (row, "width_in"), check_base (row, "length", "ft"));
}

static const CheckAsk board_feet_asks[] = {
  { "board_feet", "bdft", board_feet },
  { NULL }
};

static double
dressed (CheckRow *row,
         gboolean  width)
{
  const char *name = check_text (row, "nominal");
  int thickness_in = 0, width_in = 0, used = 0;
  double thickness_m = NAN, width_m = NAN;
  g_autoptr(GError) error = NULL;

  if (sscanf (name, "%2dx%2d%n", &thickness_in, &width_in, &used) != 2 || name[used] != '\0')
    return check_bad_input (row, "nominal");
  if (!stead_lumber_dressed_m (thickness_in, width_in, &thickness_m, &width_m, &error))
    return check_answer_none (row, error);
  return check_from_base (width ? width_m : thickness_m, "in");
}

static double
dressed_thickness (CheckRow *row)
{
  return dressed (row, FALSE);
}

static double
dressed_width (CheckRow *row)
{
  return dressed (row, TRUE);
}

static const CheckAsk dressed_asks[] = {
  { "thickness", "in", dressed_thickness },
  { "width", "in", dressed_width },
  { NULL }
};

static double
members (CheckRow *row)
{
  double length_m = check_has (row, "slope_ft") ? check_base (row, "slope", "ft") : check_base (row, "wall", "ft");

  return counted (stead_count_members (length_m, check_base (row, "spacing", "in")));
}

static const CheckAsk stud_asks[] = {
  { "studs", "count", members },
  { NULL }
};

static const CheckAsk rafter_asks[] = {
  { "rafters", "count", members },
  { NULL }
};

static const CheckAsk purlin_asks[] = {
  { "rows", "count", members },
  { NULL }
};

static double
sheets (CheckRow *row)
{
  double sheet_m2 = check_base (row, "sheet_length", "ft") * check_base (row, "sheet_width", "ft");

  return counted (stead_count_up (stead_with_waste (check_base (row, "area", "sqft"), waste_of (row)), sheet_m2));
}

static const CheckAsk sheet_asks[] = {
  { "sheets", "count", sheets },
  { NULL }
};

static double
boards (CheckRow *row)
{
  check_need (row, "rails");
  return counted (stead_fence_boards (check_base (row, "run", "ft"), whole (row, "rails", 0),
                                      check_base (row, "board", "ft"), waste_of (row)));
}

static const CheckAsk board_asks[] = {
  { "boards", "count", boards },
  { NULL }
};

/* roof slope, roof panels */

static double
slope (CheckRow *row)
{
  double run_m = check_base (row, "run", "ft");
  double overhang_m = base_or (row, "overhang_front", "ft", 0) + base_or (row, "overhang_back", "ft", 0);
  double rise_m;

  if (check_has (row, "pitch_in_per_ft") == check_has (row, "rise_ft"))
    return check_bad_input (row, "rise_ft");
  rise_m = check_has (row, "rise_ft") ? check_base (row, "rise", "ft")
                                      : run_m * check_number (row, "pitch_in_per_ft") / 12;
  return feet (stead_roof_slope_m (run_m, rise_m, overhang_m));
}

static const CheckAsk slope_asks[] = {
  { "slope_length", "ft", slope },
  { NULL }
};

static double
panels (CheckRow *row)
{
  return counted (stead_roof_panels (check_base (row, "eave", "ft"), base_or (row, "end", "ft", 0),
                                     check_base (row, "cover", "ft"), whole (row, "slopes", 1)));
}

static const CheckAsk panel_asks[] = {
  { "panels", "count", panels },
  { NULL }
};

/* shed takeoff */

static gboolean
shed_of (CheckRow         *row,
         SteadShedTakeoff *out)
{
  SteadShed shed = {
    .wall_m = check_base (row, "wall", "ft"),
    .depth_m = check_base (row, "depth", "ft"),
    .front_m = check_base (row, "front", "ft"),
    .rear_m = check_base (row, "rear", "ft"),
    .overhang_front_m = check_base (row, "overhang_front", "ft"),
    .overhang_rear_m = check_base (row, "overhang_back", "ft"),
    .end_m = check_base (row, "end", "ft"),
    .cover_m = check_base (row, "cover", "ft"),
    .spacing_m = check_base (row, "spacing", "in"),
    .post_spacing_m = check_base (row, "post_spacing", "ft"),
    .post_depth_m = check_base (row, "post_depth", "ft"),
    .girt_m = check_base (row, "girt", "ft"),
    .sheet_length_m = check_base (row, "sheet_length", "ft"),
    .sheet_width_m = check_base (row, "sheet_width", "ft"),
    .waste_frac = check_frac (row, "waste_pct"),
    .step_m = check_base (row, "step", "ft"),
    .housed_each_m2 = check_base (row, "housed_each", "sqft"),
  };
  g_autoptr(GError) error = NULL;

  if (stead_shed_take_off (&shed, out, &error))
    return TRUE;
  check_answer_none (row, error);
  return FALSE;
}

#define SHED_ASK(name, value)                                        \
  static double name (CheckRow *row)                                 \
  {                                                                  \
    SteadShedTakeoff shed;                                           \
                                                                     \
    return shed_of (row, &shed) ? (double) (value) : NAN;            \
  }

SHED_ASK (shed_panels, shed.roof_panels)
SHED_ASK (shed_panel_length, feet (shed.roof_panel_m))
SHED_ASK (shed_rafters, shed.rafters)
SHED_ASK (shed_rafter_length, feet (shed.rafter_m))
SHED_ASK (shed_purlins, shed.purlin_rows)
SHED_ASK (shed_front_posts, shed.front_posts)
SHED_ASK (shed_front_length, feet (shed.front_post_m))
SHED_ASK (shed_rear_posts, shed.rear_posts)
SHED_ASK (shed_rear_length, feet (shed.rear_post_m))
SHED_ASK (shed_girts, shed.girts)
SHED_ASK (shed_siding, shed.siding_sheets)
SHED_ASK (shed_capacity, shed.capacity)

static const CheckAsk shed_asks[] = {
  { "roof_sheets", "count", shed_panels },
  { "roof_sheet_length", "ft", shed_panel_length },
  { "rafters", "count", shed_rafters },
  { "rafter_length", "ft", shed_rafter_length },
  { "purlin_rows", "count", shed_purlins },
  { "front_posts", "count", shed_front_posts },
  { "front_post_length", "ft", shed_front_length },
  { "rear_posts", "count", shed_rear_posts },
  { "rear_post_length", "ft", shed_rear_length },
  { "girts", "count", shed_girts },
  { "siding_sheets", "count", shed_siding },
  { "capacity", "count", shed_capacity },
  { NULL }
};

/* gravel, bedding */

static double
gravel_m3 (CheckRow *row)
{
  return stead_fill_m3 (check_base (row, "length", "ft") * check_base (row, "width", "ft"),
                        check_base (row, "depth", "in"));
}

static double
gravel_yards (CheckRow *row)
{
  return check_from_base (1000 * gravel_m3 (row), "cuft") / 27;
}

static double
gravel_tons (CheckRow *row)
{
  double kg = stead_fill_kg (gravel_m3 (row), check_number (row, "ton_per_cuyd") * STEAD_KG_M3_PER_TON_CUYD);

  return check_from_base (kg, "lb") / 2000;
}

static const CheckAsk gravel_asks[] = {
  { "volume", "cuyd", gravel_yards },
  { "weight", "ton", gravel_tons },
  { NULL }
};

static double
bedding (CheckRow *row)
{
  return check_from_base (1000 * stead_fill_m3 (check_base (row, "area", "sqft"), check_base (row, "depth", "in")),
                          "cuft");
}

static const CheckAsk bedding_asks[] = {
  { "volume", "cuft", bedding },
  { NULL }
};

/* mesh area, poultry run takeoff */

static SteadMeshRun
run_of (CheckRow *row)
{
  return (SteadMeshRun) { check_base (row, "length", "ft"), check_base (row, "width", "ft"),
                          check_base (row, "height", "ft"), check_base (row, "apron", "ft") };
}

static double
mesh_area (CheckRow *row)
{
  SteadMeshRun run = run_of (row);

  return check_from_base (stead_mesh_run_m2 (&run), "sqft");
}

static double
mesh_rolls (CheckRow *row)
{
  SteadMeshRun run = run_of (row);

  return counted (stead_mesh_rolls (stead_mesh_run_m2 (&run), waste_of (row),
                                    check_base (row, "roll_width", "ft"), check_base (row, "roll_length", "ft")));
}

static const CheckAsk mesh_asks[] = {
  { "area", "sqft", mesh_area },
  { "rolls", "count", mesh_rolls },
  { NULL }
};

static double
run_feeder (CheckRow *row)
{
  return feet (group_need (row, "hens", "feeder_each", "in"));
}

static double
run_posts (CheckRow *row)
{
  SteadMeshRun run = run_of (row);

  return counted (stead_mesh_run_posts (&run, check_base (row, "post_spacing", "ft")));
}

static const CheckAsk run_asks[] = {
  { "mesh_area", "sqft", mesh_area },
  { "rolls", "count", mesh_rolls },
  { "nest_boxes", "count", nest_boxes },
  { "perch_length", "ft", perch },
  { "feeder_length", "ft", run_feeder },
  { "posts", "count", run_posts },
  { NULL }
};

/* hoop house */

/* What an ask does not need, and the row does not have, is one meter. */
static gboolean
hoop_of (CheckRow         *row,
         const char       *needed,
         SteadHoopTakeoff *out)
{
  SteadHoop hoop = {
    .width_m = base_or (row, "width", "ft", 1),
    .length_m = base_or (row, "length", "ft", 1),
    .spacing_m = base_or (row, "spacing", "ft", 1),
    .arc_m = base_or (row, "arc", "ft", 0),
    .height_m = base_or (row, "height", "ft", 0),
    .extra_m = base_or (row, "extra", "ft", STEAD_HOOP_EXTRA_M),
  };
  g_autoptr(GError) error = NULL;

  check_need (row, needed);
  if (stead_hoop_take_off (&hoop, out, &error))
    return TRUE;
  check_answer_none (row, error);
  return FALSE;
}

#define HOOP_ASK(name, needed, value)                                \
  static double name (CheckRow *row)                                 \
  {                                                                  \
    SteadHoopTakeoff hoop;                                           \
                                                                     \
    return hoop_of (row, needed, &hoop) ? (double) (value) : NAN;    \
  }

#define ARC_NAME(row) (check_has (row, "arc_ft") ? "arc_ft" : "width_ft")

HOOP_ASK (hoop_bows, "length_ft spacing_ft", hoop.bows)
HOOP_ASK (hoop_posts, "length_ft spacing_ft", hoop.ground_posts)
HOOP_ASK (hoop_bow, ARC_NAME (row), feet (hoop.bow_m))
HOOP_ASK (hoop_cover_width, ARC_NAME (row), feet (hoop.cover_width_m))
HOOP_ASK (hoop_cover_length, "length_ft", feet (hoop.cover_length_m))
HOOP_ASK (hoop_end_pieces, "width_ft", hoop.end_pieces)
HOOP_ASK (hoop_end_width, "width_ft", feet (hoop.end_width_m))
HOOP_ASK (hoop_end_height, "width_ft", feet (hoop.end_height_m))
HOOP_ASK (hoop_ends_area, "width_ft",
          check_from_base ((double) hoop.end_pieces * hoop.end_width_m * hoop.end_height_m, "sqft"))
HOOP_ASK (hoop_base_board, "width_ft length_ft", feet (hoop.base_board_m))

static double
hoop_cover_area (CheckRow *row)
{
  SteadHoopTakeoff hoop;

  check_need (row, ARC_NAME (row));
  return hoop_of (row, "length_ft", &hoop) ? check_from_base (hoop.cover_width_m * hoop.cover_length_m, "sqft") : NAN;
}

static double
hoop_outside (CheckRow *row)
{
  return check_from_base (stead_hoop_skin_m2 (check_base (row, "width", "ft"), check_base (row, "length", "ft")),
                          "sqft");
}

static const CheckAsk hoop_asks[] = {
  { "bows", "count", hoop_bows },
  { "ground_posts", "count", hoop_posts },
  { "bow_length", "ft", hoop_bow },
  { "cover_width", "ft", hoop_cover_width },
  { "cover_length", "ft", hoop_cover_length },
  { "cover_area", "sqft", hoop_cover_area },
  { "end_pieces", "count", hoop_end_pieces },
  { "end_width", "ft", hoop_end_width },
  { "end_height", "ft", hoop_end_height },
  { "ends_area", "sqft", hoop_ends_area },
  { "outside_area", "sqft", hoop_outside },
  { "base_board", "ft", hoop_base_board },
  { NULL }
};

/* heat load: the greenhouse's heat, asked for by its measures */

/* One Btu/h/sqft/F as W/m²/°C. */
#define U_SI (STEAD_W_PER_BTU_H * 1.8 / 0.09290304)

static double
difference_c (CheckRow *row)
{
  double difference_f = check_has (row, "dt_F") ? check_number (row, "dt_F")
                        : check_number (row, "inside_F") - check_number (row, "outside_F");

  if (check_has (row, "dt_F") && (check_has (row, "inside_F") || check_has (row, "outside_F")))
    check_bad_input (row, "dt_F");
  return difference_f / 1.8;
}

static double
heat_skin_m2 (CheckRow *row)
{
  if (check_has (row, "area_sqft"))
    return check_has (row, "width_ft") ? check_bad_input (row, "area_sqft") : check_base (row, "area", "sqft");
  return stead_hoop_skin_m2 (check_base (row, "width", "ft"), check_base (row, "length", "ft"));
}

static double
heat_u (CheckRow *row)
{
  static const char * const covers[] = { "single_poly", "double_poly", NULL };
  static const SteadCover which[] = { STEAD_COVER_SINGLE_FILM, STEAD_COVER_DOUBLE_FILM };

  if (check_has (row, "u_btu_h_sqft_F"))
    return check_has (row, "cover") ? check_bad_input (row, "cover") : check_number (row, "u_btu_h_sqft_F") * U_SI;
  return stead_cover_u_w_m2_c (which[check_word (row, "cover", covers, -1)]);
}

static double
conduction (CheckRow *row)
{
  SteadGreenhouseSkin skin = { heat_skin_m2 (row), heat_u (row) };

  return stead_greenhouse_loss_w (stead_greenhouse_ua_w_c (&skin, 1), difference_c (row)) / STEAD_W_PER_BTU_H;
}

static double
leakage (CheckRow *row)
{
  double volume_m3 = stead_hoop_volume_m3 (check_base (row, "width", "ft"), check_base (row, "length", "ft"));
  double ua = stead_greenhouse_leak_ua_w_c (volume_m3, check_number (row, "ach"));

  /* The program's own figure for air is 0.018. */
  if (fabs (check_number_or (row, "k_btu_cuft_F", 0.018) - 0.018) > 1e-12)
    return check_bad_input (row, "k_btu_cuft_F");
  return stead_greenhouse_loss_w (ua, difference_c (row)) / STEAD_W_PER_BTU_H;
}

static const CheckAsk heat_asks[] = {
  { "conduction", "Btu/h", conduction },
  { "leakage", "Btu/h", leakage },
  { NULL }
};

/* material cost */

static gboolean
bill_of (CheckRow  *row,
         SteadBill *out)
{
  gsize n = 0;
  const double *quantities = check_list (row, "quantities", &n);
  const double *prices = check_cents_list (row, "prices_usd", &n);
  g_auto(GStrv) items = g_strsplit (check_text (row, "items"), "|", -1);
  g_autofree SteadBillLine *lines = g_new0 (SteadBillLine, n);
  g_autoptr(GError) error = NULL;

  if (g_strv_length (items) != n)
    check_bad_input (row, "items");
  for (gsize i = 0; i < n; i++)
    lines[i] = (SteadBillLine) { .quantity = quantities[i], .price_cents = prices[i] };
  if (stead_bill_sum (lines, n, 0, check_frac_or (row, "contingency_pct", 0), out, &error))
    return TRUE;
  check_answer_none (row, error);
  return FALSE;
}

#define BILL_ASK(name, value)                                        \
  static double name (CheckRow *row)                                 \
  {                                                                  \
    SteadBill bill;                                                  \
                                                                     \
    return bill_of (row, &bill) ? (double) (value) : NAN;            \
  }

BILL_ASK (bill_subtotal, bill.bought_cents)
BILL_ASK (bill_contingency, bill.contingency_cents)
BILL_ASK (bill_total, bill.cash_cents)

static const CheckAsk bill_asks[] = {
  { "subtotal", "USD", bill_subtotal },
  { "contingency", "USD", bill_contingency },
  { "total", "USD", bill_total },
  { NULL }
};

/* cutting plan */

static SteadCutPlan *
cut_of (CheckRow *row)
{
  gsize n = 0;
  gsize n_stocks = 0;
  g_autofree double *lengths_m = check_base_list (row, "lengths", "ft m", &n);
  const double *counts = check_list (row, "counts", &n);
  g_autofree double *stocks_m = check_base_list (row, "stock", "ft m", &n_stocks);
  const double *prices = check_has (row, "stock_usd") ? check_cents_list (row, "stock_usd", &n_stocks) : NULL;
  g_autofree SteadCutPiece *pieces = g_new0 (SteadCutPiece, n);
  g_autofree SteadCutStock *stocks = g_new0 (SteadCutStock, n_stocks);
  g_autoptr(GError) error = NULL;
  SteadCutPlan *plan = NULL;

  for (gsize i = 0; i < n; i++)
    {
      if (!(counts[i] >= 0 && counts[i] <= STEAD_CUT_MOST_PIECES && counts[i] == floor (counts[i])))
        check_bad_input (row, "counts");
      else
        pieces[i] = (SteadCutPiece) { lengths_m[i], (guint) counts[i] };
    }
  for (gsize s = 0; s < n_stocks; s++)
    stocks[s] = (SteadCutStock) { stocks_m[s], prices != NULL ? prices[s] : 0 };
  if (n_stocks <= STEAD_CUT_MOST_STOCKS)
    plan = stead_cut_plan_new (pieces, n, stocks, n_stocks, base_or (row, "kerf", "in", 0), &error);
  if (plan == NULL)
    check_answer_none (row, error);
  return plan;
}

static double
cut_bars (CheckRow *row)
{
  g_autoptr(SteadCutPlan) plan = cut_of (row);

  return plan != NULL ? (double) plan->n_bars : NAN;
}

static double
cut_bought (CheckRow *row)
{
  g_autoptr(SteadCutPlan) plan = cut_of (row);

  return plan != NULL ? feet (plan->bought_m) : NAN;
}

static double
cut_cost (CheckRow *row)
{
  g_autoptr(SteadCutPlan) plan = cut_of (row);

  check_need (row, "stock_usd");
  return plan != NULL ? plan->cost_cents : NAN;
}

static double
cut_proven (CheckRow *row)
{
  g_autoptr(SteadCutPlan) plan = cut_of (row);

  return plan != NULL ? check_answer_word (row, plan->proven ? "yes" : "no") : NAN;
}

static const CheckAsk cut_asks[] = {
  { "bars", "count", cut_bars },
  { "bought", "ft", cut_bought },
  { "cost", "USD", cut_cost },
  { "proven", "text", cut_proven },
  { NULL }
};

const CheckTopic check_build_topics[] = {
  { "housed area", "head housed_each_sqft yard_each_sqft", area_asks },
  { "shed capacity", "length_ft width_ft housed_each_sqft", capacity_asks },
  { "feeder length", "head feeder_each_in", feeder_asks },
  { "perch length", "hens perch_each_in", perch_asks },
  { "nest boxes", "hens hens_per_box", nest_asks },
  { "herd water", "head water_each_gal_d", water_asks },
  { "board feet", "pieces thickness_in width_in length_ft", board_feet_asks },
  { "dressed lumber size", "nominal", dressed_asks },
  { "studs", "wall_ft spacing_in", stud_asks },
  { "rafters", "wall_ft spacing_in", rafter_asks },
  { "purlin rows", "slope_ft spacing_in", purlin_asks },
  { "sheet count", "area_sqft sheet_length_ft sheet_width_ft waste_pct", sheet_asks },
  { "fence boards", "run_ft rails board_ft waste_pct", board_asks },
  { "roof slope", "run_ft pitch_in_per_ft rise_ft overhang_front_ft overhang_back_ft", slope_asks },
  { "roof panels", "eave_ft end_ft cover_ft slopes", panel_asks },
  { "shed takeoff",
    "wall_ft depth_ft front_ft rear_ft overhang_front_ft overhang_back_ft end_ft cover_ft spacing_in "
    "post_spacing_ft post_depth_ft girt_ft sheet_length_ft sheet_width_ft waste_pct step_ft "
    "housed_each_sqft", shed_asks },
  { "gravel", "length_ft width_ft depth_in ton_per_cuyd", gravel_asks },
  { "bedding", "area_sqft depth_in", bedding_asks },
  { "mesh area",
    "length_ft width_ft height_ft apron_ft waste_pct roll_width_ft roll_length_ft", mesh_asks },
  { "poultry run takeoff",
    "hens length_ft width_ft height_ft apron_ft waste_pct roll_width_ft roll_length_ft hens_per_box "
    "perch_each_in feeder_each_in post_spacing_ft", run_asks },
  { "hoop house", "width_ft length_ft spacing_ft arc_ft height_ft extra_ft", hoop_asks },
  { "heat load",
    "area_sqft width_ft length_ft u_btu_h_sqft_F cover dt_F inside_F outside_F ach k_btu_cuft_F", heat_asks },
  { "cutting plan", "lengths_ft lengths_m counts stock_ft stock_m stock_usd kerf_in", cut_asks },
  { "material cost", "items quantities prices_usd contingency_pct", bill_asks },
  { NULL }
};
