/* What a build takes: fences, holes, roofs, houses, and its bill. */
#include "core/stead-bill.h"
#include "core/stead-concrete.h"
#include "core/stead-core-error.h"
#include "core/stead-count.h"
#include "core/stead-fence.h"
#include "core/stead-fill.h"
#include "core/stead-hoop.h"
#include "core/stead-lumber.h"
#include "core/stead-mesh.h"
#include "core/stead-outline.h"
#include "core/stead-pen-room.h"
#include "core/stead-roof.h"

#include <math.h>

#define FT 0.3048
#define IN 0.0254
#define CUFT 0.028316846592

/* Numbers that a person may type by mistake. */
static const double odd[] = { NAN, INFINITY, -INFINITY, -1, 0, 1e-300, 1e300, 5 };

/* A trades-math study guide, key formulas (read): studs of 12 ft at 16 in, sheets. */
static void
test_count (void)
{
  g_assert_cmpint (stead_count_members (12 * FT, 16 * IN), ==, 10);
  g_assert_cmpint (stead_count_up (500 * 1.1, 32), ==, 18);
  /* What is whole stays whole, by whatever detour. */
  g_assert_cmpint (stead_count_up (0.3, 0.1), ==, 3);
  g_assert_cmpint (stead_count_down (0.3, 0.1), ==, 3);
  g_assert_cmpint (stead_count_up (0, 3), ==, 0);
  g_assert_cmpint (stead_count_members (0, 3), ==, 1);
  g_assert_cmpfloat_with_epsilon (stead_step_up (10.5 * FT, 2 * FT), 12 * FT, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_count_bay (50, 8), 7.142857, 1e-6);
  g_assert_true (isnan (stead_count_bay (0, 8)));
  g_assert_true (isnan (stead_with_waste (10, 1.1)));
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    for (gsize j = 0; j < G_N_ELEMENTS (odd); j++)
      {
        gint64 up = stead_count_up (odd[i], odd[j]);

        g_assert_cmpint (up, >=, STEAD_COUNT_NONE);
        g_assert_cmpint (up, <=, STEAD_COUNT_MOST);
        g_assert_cmpint (stead_count_down (odd[i], odd[j]), <=, up);
        g_assert_true ((up == STEAD_COUNT_NONE) == isnan (stead_step_up (odd[i], odd[j])));
      }
}

static void
assert_refused (const SteadFencePlan *plan)
{
  SteadFenceTakeoff out = { .line_posts = 77 };
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_fence_take_off (plan, &out, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpint (out.line_posts, ==, 77);
}

/* Posts, one by one: walked along each side at the spacing of its bays.  The same
 * pen, counted another way. */
static gint64
walk_posts (const SteadFencePlan *plan)
{
  gint64 posts = 0;

  for (gsize s = 0; s < plan->n_sides; s++)
    {
      double at = 0;

      posts++;   /* the corner */
      while (at < plan->sides_m[s] - 1e-6)
        {
          const SteadFenceGate *next = NULL;
          double to;
          double bay;

          for (gsize g = 0; g < plan->n_gates; g++)
            if (plan->gates[g].side == s && plan->gates[g].offset_m >= at - 1e-6
                && (next == NULL || plan->gates[g].offset_m < next->offset_m))
              next = &plan->gates[g];
          to = next != NULL ? next->offset_m : plan->sides_m[s];
          bay = to - at;
          for (int n = 1; bay > plan->spacing_m + 1e-9; n++)
            bay = (to - at) / (n + 1);
          for (double x = at + bay; bay > 1e-6 && x < to - 1e-6; x += bay)
            posts++;
          if (next == NULL)
            break;
          posts += to > at + 1e-6;
          at = next->offset_m + next->width_m;
          posts += at < plan->sides_m[s] - 1e-6;
        }
    }
  return posts;
}

static void
test_fence (void)
{
  const double sides[] = { 48 * FT, 24 * FT, 48 * FT, 24 * FT };
  const SteadFenceGate gates[] = { { 1, 6 * FT, 12 * FT }, { 0, 8 * FT, 4 * FT } };
  SteadFencePlan plan = { sides, 4, gates, 2, 8 * FT };
  SteadFenceTakeoff out;
  g_autoptr(GArray) runs = NULL;
  g_autoptr(GError) error = NULL;

  /* A goat pen worked by hand: runs of 8, 36, 6, 6, 48 and 24 ft (derived). */
  g_assert_true (stead_fence_take_off (&plan, &out, &error));
  g_assert_no_error (error);
  g_assert_cmpint (out.corner_posts + out.gate_posts, ==, 8);
  g_assert_cmpint (out.line_posts, ==, 11);
  g_assert_cmpint (out.brace_posts, ==, 0);
  g_assert_cmpint (out.brace_rails, ==, 8);
  g_assert_cmpfloat_with_epsilon (out.net_wire_m, 128 * FT, 1e-9);
  runs = stead_fence_runs (&plan, &error);
  g_assert_cmpint (runs->len, ==, 6);
  g_assert_cmpfloat_with_epsilon (g_array_index (runs, double, 0), 8 * FT, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (runs, double, 1), 36 * FT, 1e-9);
  /* One inch wider, and the bays need posts of their own for braces. */
  plan.spacing_m = 8 * FT + IN;
  g_assert_true (stead_fence_take_off (&plan, &out, NULL));
  g_assert_cmpint (out.brace_posts, ==, 8);
}

static void
test_fence_gates (void)
{
  const double sides[] = { 30, 20, 30, 20 };
  const SteadFenceGate side_by_side[] = { { 0, 10, 4 }, { 0, 14, 4 } };
  const SteadFenceGate whole_side[] = { { 3, 0, 20 } };
  SteadFencePlan plan = { sides, 4, side_by_side, 2, 10 };
  SteadFenceTakeoff out;

  /* Two gates share the post between them. */
  g_assert_true (stead_fence_take_off (&plan, &out, NULL));
  g_assert_cmpint (out.gate_posts, ==, 3);
  plan.gates = whole_side;
  plan.n_gates = 1;
  g_assert_true (stead_fence_take_off (&plan, &out, NULL));
  g_assert_cmpint (out.gate_posts, ==, 0);
  g_assert_cmpfloat_with_epsilon (out.net_wire_m, 80, 1e-9);
}

static void
test_fence_refused (void)
{
  const double sides[] = { 30, 20, 30, 20 };
  const double open_sides[] = { 70, 20, 30 };
  const double bad_sides[] = { 30, NAN, 30, 20 };
  const SteadFenceGate wide[] = { { 1, 0, 21 } };
  const SteadFenceGate past[] = { { 1, 18, 3 } };
  const SteadFenceGate twice[] = { { 0, 5, 4 }, { 0, 8, 4 } };
  const SteadFenceGate nowhere[] = { { 4, 0, 1 } };
  const SteadFencePlan plans[] = {
    { sides, 2, NULL, 0, 8 }, { open_sides, 3, NULL, 0, 8 }, { bad_sides, 4, NULL, 0, 8 },
    { sides, 4, wide, 1, 8 }, { sides, 4, past, 1, 8 }, { sides, 4, twice, 2, 8 },
    { sides, 4, nowhere, 1, 8 }, { sides, 4, NULL, 0, 0 }, { sides, 4, NULL, 0, NAN },
    { sides, 4, NULL, 0, -8 }, { sides, 4, NULL, 0, 1e-9 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (plans); i++)
    assert_refused (&plans[i]);
}

/* Thousands of pens: the posts are those that one meets walking along. */
static void
test_fence_walked (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20260301);

  for (int i = 0; i < 3000; i++)
    {
      double sides[4];
      SteadFenceGate gates[4];
      SteadFencePlan plan = { sides, 4, gates, 0, g_rand_double_range (rand, 1, 5) };
      SteadFenceTakeoff out;

      sides[0] = sides[2] = g_rand_int_range (rand, 5, 60);
      sides[1] = sides[3] = g_rand_int_range (rand, 5, 60);
      for (gsize s = 0; s < 4; s++)
        if (g_rand_boolean (rand))
          {
            double width = g_rand_int_range (rand, 1, 5);

            gates[plan.n_gates++] = (SteadFenceGate) {
              s, g_rand_int_range (rand, 0, (int) (sides[s] - width) + 1), width };
          }
      g_assert_true (stead_fence_take_off (&plan, &out, NULL));
      g_assert_cmpint (out.corner_posts + out.gate_posts + out.line_posts, ==, walk_posts (&plan));
    }
}

/* University of Missouri Extension, constructing wire fences (read). */
static void
test_posts (void)
{
  g_assert_cmpint (stead_fence_brace_spans (200 * FT), ==, 1);
  g_assert_cmpint (stead_fence_brace_spans (201 * FT), ==, 2);
  g_assert_cmpint (stead_fence_staples (13, 11, 8), ==, 181);
  g_assert_cmpint (stead_fence_staples (12, 1, 0), ==, 6);
  g_assert_cmpfloat_with_epsilon (stead_post_length_m (4 * FT, 3.5 * FT, 0.5 * FT), 8 * FT, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_post_depth_m (3 * FT, 42 * IN), 3.5 * FT, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_post_hole_depth_m (60 * IN), 26 * IN, 1e-9);
  g_assert_true (isnan (stead_post_length_m (NAN, 1, 1)));
  g_assert_true (isnan (stead_post_depth_m (-1, 1)));
  g_assert_true (isnan (stead_post_hole_width_m (0)));
}

/* A garden guide's example (read), and one worked by hand (derived). */
static void
test_concrete (void)
{
  SteadPostHole hole = { STEAD_HOLE_ROUND, 6 * IN, STEAD_HOLE_ROUND, 0, 36 * IN };

  g_assert_cmpfloat_with_epsilon (stead_post_hole_m3 (&hole) / CUFT, 0.59, 0.005);
  hole = (SteadPostHole) { STEAD_HOLE_ROUND, 12 * IN, STEAD_HOLE_ROUND, 6 * IN, 42 * IN };
  g_assert_cmpfloat_with_epsilon (stead_post_hole_m3 (&hole) / CUFT, 2.0617, 0.00005);
  g_assert_cmpint (stead_concrete_bags (8 * 1.1 * stead_post_hole_m3 (&hole), 80), ==, 31);
  g_assert_cmpint (stead_concrete_bags_by_hole (1.1 * stead_post_hole_m3 (&hole), 8, 80), ==, 32);
  g_assert_cmpint (stead_concrete_bags (27 * CUFT, 80), ==, 45);
  g_assert_cmpint (stead_concrete_bags (27 * CUFT, 70), ==, STEAD_COUNT_NONE);
  g_assert_cmpint (stead_concrete_bags_by_hole (1e9, G_MAXINT64, 80), ==, STEAD_COUNT_NONE);
  /* A square post of 9 in is 12.7 in across: it does not go into a hole of 12. */
  hole.post_shape = STEAD_HOLE_SQUARE;
  hole.post_width_m = 9 * IN;
  g_assert_true (isnan (stead_post_hole_m3 (&hole)));
  hole.post_width_m = 8 * IN;
  g_assert_false (isnan (stead_post_hole_m3 (&hole)));
  hole.depth_m = NAN;
  g_assert_true (isnan (stead_post_hole_m3 (&hole)));
  g_assert_cmpfloat_with_epsilon (stead_footing_depth_m (0), 12 * IN, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_footing_depth_m (30 * IN), 30 * IN, 1e-12);
}

/* Softwood lumber standard PS 20 (memory). */
static void
test_lumber (void)
{
  double thick = 1, wide = 1;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_lumber_dressed_m (2, 6, &thick, &wide, &error));
  g_assert_cmpfloat_with_epsilon (thick, 1.5 * IN, 1e-12);
  g_assert_cmpfloat_with_epsilon (wide, 5.5 * IN, 1e-12);
  g_assert_true (stead_lumber_dressed_m (6, 6, &thick, &wide, &error));
  g_assert_cmpfloat_with_epsilon (thick, 5.5 * IN, 1e-12);
  for (int t = -1; t < 14; t++)
    for (int w = -1; w < 14; w++)
      if (stead_lumber_dressed_m (t, w, &thick, &wide, NULL))
        g_assert_true (thick < t * IN && wide < w * IN && thick <= wide);
  thick = 9;
  g_assert_false (stead_lumber_dressed_m (2, 7, &thick, &wide, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpfloat (thick, ==, 9);
  g_assert_cmpfloat_with_epsilon (stead_board_feet (7, 2, 6, 10 * FT), 70, 1e-9);
  g_assert_cmpint (stead_fence_boards (96 * FT, 3, 16 * FT, 0.1), ==, 20);
}

/* A metal roofing maker's guide (read); a shed worked by hand (derived). */
static void
test_roof (void)
{
  SteadShed shed = { 12 * FT, 8 * FT, 7 * FT, 5 * FT, 1 * FT, 0.5 * FT, 0.5 * FT, 3 * FT, 24 * IN,
                     8 * FT, 3.5 * FT, 16 * FT, 8 * FT, 4 * FT, 0.1, 2 * FT, 15 * FT * FT };
  SteadShedTakeoff out = { .girts = 77 };
  g_autoptr(GError) error = NULL;

  g_assert_cmpint (stead_roof_panels (8, 0, 2.75, 2), ==, 6);
  g_assert_cmpfloat_with_epsilon (stead_roof_slope_m (20, 20 * 4.0 / 12, 0), 21.0819, 0.00005);
  g_assert_true (stead_shed_take_off (&shed, &out, &error));
  g_assert_cmpint (out.girts, ==, 8);
  g_assert_cmpint (out.siding_sheets, ==, 6);
  g_assert_cmpfloat_with_epsilon (out.front_post_m, 12 * FT, 1e-9);
  /* Whatever is typed into a field: a whole answer or a refusal. */
  for (gsize field = 0; field < sizeof shed / sizeof (double); field++)
    for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
      {
        SteadShed other = shed;
        SteadShedTakeoff got = { .girts = 77 };

        ((double *) &other)[field] = odd[i];
        if (stead_shed_take_off (&other, &got, NULL))
          g_assert_true (got.roof_panels > 0 && got.rafters > 0 && got.girts >= 0 && got.capacity >= 0
                         && isfinite (got.rafter_m) && isfinite (got.rear_post_m));
        else
          g_assert_cmpint (got.girts, ==, 77);
      }
  shed.rear_m = 8 * FT;
  g_assert_false (stead_shed_take_off (&shed, &out, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
}

/* Rutgers University, high tunnel construction (read): 17 x 36 ft has 10 bows. */
static void
test_hoop (void)
{
  SteadHoop hoop = { 17 * FT, 36 * FT, 4 * FT, 0, 0, STEAD_HOOP_EXTRA_M };
  SteadHoopTakeoff out = { .bows = 77 };
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_hoop_take_off (&hoop, &out, &error));
  g_assert_cmpint (out.bows, ==, 10);
  g_assert_cmpint (out.ground_posts, ==, 20);
  /* A covering seller's example (read): an arc of 29 ft over 40 ft takes 31 x 42. */
  hoop = (SteadHoop) { 17 * FT, 40 * FT, 4 * FT, 29 * FT, 0, STEAD_HOOP_EXTRA_M };
  g_assert_true (stead_hoop_take_off (&hoop, &out, &error));
  g_assert_cmpfloat_with_epsilon (out.cover_width_m, 31 * FT, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.cover_length_m, 42 * FT, 1e-9);
  out.bows = 77;
  hoop.arc_m = 16 * FT;
  g_assert_false (stead_hoop_take_off (&hoop, &out, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpint (out.bows, ==, 77);
  for (gsize field = 0; field < 6; field++)
    for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
      {
        SteadHoop other = { 17, 36, 4, 30, 8, 0.6 };

        ((double *) &other)[field] = odd[i];
        if (stead_hoop_take_off (&other, &out, NULL))
          g_assert_true (out.bows > 0 && isfinite (out.cover_width_m) && isfinite (out.end_height_m));
      }
}

/* Worked by hand: walls 360, roof 200, apron 120 + 16 (derived). */
static void
test_mesh_and_fill (void)
{
  SteadMeshRun run = { 20 * FT, 10 * FT, 6 * FT, 2 * FT };
  SteadPenGroup groups[] = { { 5, 16 }, { 9, 7 } };

  g_assert_cmpfloat_with_epsilon (stead_mesh_run_m2 (&run) / (FT * FT), 696, 1e-9);
  g_assert_cmpint (stead_mesh_rolls (stead_mesh_run_m2 (&run), 0.1, 4 * FT, 50 * FT), ==, 4);
  g_assert_cmpint (stead_mesh_run_posts (&run, 8 * FT), ==, 10);
  g_assert_cmpint (stead_mesh_rolls (10, 0, -1, -1), ==, STEAD_COUNT_NONE);
  g_assert_cmpint (stead_mesh_run_posts (&run, 0), ==, STEAD_COUNT_NONE);
  run.height_m = 0;
  g_assert_true (isnan (stead_mesh_run_m2 (&run)));
  /* A question-and-answer page on gravel (read): 12 x 12 ft, 6 in deep. */
  g_assert_cmpfloat_with_epsilon (stead_fill_m3 (12 * FT * 12 * FT, 6 * IN) / CUFT / 27, 2.67, 0.005);
  g_assert_true (isnan (stead_fill_kg (-1, 1)));
  g_assert_cmpfloat_with_epsilon (stead_pen_need (groups, 2), 143, 1e-9);
  groups[1].head = NAN;
  g_assert_true (isnan (stead_pen_need (groups, 2)));
  g_assert_cmpint (stead_pen_capacity (12 * 8, 15), ==, 6);
}

/* Iowa State University Extension fence costs, 29 Feb 2012 (read): 2,553.31 USD. */
static void
test_bill (void)
{
  SteadBillLine fence[] = { { 4, 2800, FALSE, FALSE }, { 57, 900, FALSE, FALSE }, { 55, 500, FALSE, FALSE },
                            { 10, 180, FALSE, FALSE }, { 1320, 6, FALSE, FALSE }, { 1320, 70, FALSE, FALSE },
                            { 42, 1505, FALSE, FALSE } };
  SteadBillLine half[] = { { 3, 33.5, FALSE, TRUE }, { 1, 33.5, FALSE, TRUE }, { 1, 20000, TRUE, TRUE } };
  SteadBill bill = { 0 };
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_bill_sum (fence, G_N_ELEMENTS (fence), 0, 0, &bill, &error));
  /* The source rounds its labor; 2,553.30 is the sum of its lines. */
  g_assert_cmpint (ABS (bill.cash_cents - 255331), <=, 5);
  /* Lines are rounded first: 101 and 34 cents.  What is given is not paid nor taxed. */
  g_assert_true (stead_bill_sum (half, 3, 0.06, 0.1, &bill, &error));
  g_assert_cmpint (bill.bought_cents, ==, 135);
  g_assert_cmpint (bill.tax_cents, ==, 8);
  g_assert_cmpint (bill.contingency_cents, ==, 14);
  g_assert_cmpint (bill.cash_cents, ==, 157);
  g_assert_cmpint (bill.given_cents, ==, 20000);
  g_assert_cmpint (bill.worth_cents, ==, 20157);
  half[1].price_cents = NAN;
  g_assert_false (stead_bill_sum (half, 3, 0, 0, &bill, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_clear_error (&error);
  half[1].price_cents = 1e13;
  g_assert_false (stead_bill_sum (half, 3, 0, 0, &bill, &error));
  g_clear_error (&error);
  g_assert_false (stead_bill_sum (half, 1, 0, NAN, &bill, &error));
  g_assert_cmpint (bill.worth_cents, ==, 20157);
}

static void
assert_no_plan (const SteadCorner *corners,
                gsize              n)
{
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_outline_check (corners, n, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
}

/* Figures of plane geometry: a triangle of 3, 4 and 5, and an L. */
static void
test_outline (void)
{
  const SteadCorner triangle[] = { { 1000, 2000 }, { 1003, 2000 }, { 1003, 2004 } };
  const SteadCorner bent[] = { { 0, 0 }, { 4, 0 }, { 4, 2 }, { 2, 2 }, { 2, 5 }, { 0, 5 } };
  const SteadCorner bow_tie[] = { { 0, 0 }, { 4, 4 }, { 4, 0 }, { 0, 3 } };
  const SteadCorner touching[] = { { 0, 0 }, { 4, 0 }, { 4, 4 }, { 2, 0 }, { 0, 4 } };
  const SteadCorner back[] = { { 0, 0 }, { 4, 0 }, { 2, 0 }, { 2, 3 } };
  const SteadCorner past[] = { { 0, 0 }, { 4, 0 }, { -1, 0 }, { -1, 3 } };
  const SteadCorner flat[] = { { 0, 0 }, { 4, 0 }, { 9, 0 } };
  const SteadCorner twice[] = { { 0, 0 }, { 4, 0 }, { 4, 0 }, { 0, 4 } };
  const SteadCorner nowhere[] = { { 0, 0 }, { NAN, 0 }, { 4, 4 } };
  const SteadCorner straight[] = { { 0, 0 }, { 2, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } };
  double sides[6];

  g_assert_cmpfloat_with_epsilon (stead_outline_sides (triangle, 3, sides), 12, 1e-9);
  g_assert_cmpfloat_with_epsilon (sides[2], 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_outline_area_m2 (triangle, 3), 6, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_outline_area_m2 (bent, 6), 14, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_outline_sides (bent, 6, sides), 18, 1e-9);
  g_assert_true (stead_outline_check (triangle, 3, NULL));
  g_assert_true (stead_outline_check (bent, 6, NULL));
  /* A corner on a straight side is allowed: a post may stand there. */
  g_assert_true (stead_outline_check (straight, 5, NULL));
  assert_no_plan (bow_tie, 4);
  assert_no_plan (touching, 5);
  assert_no_plan (back, 4);
  assert_no_plan (past, 4);
  assert_no_plan (flat, 3);
  assert_no_plan (twice, 4);
  assert_no_plan (nowhere, 3);
  assert_no_plan (triangle, 2);
  g_assert_cmpfloat_with_epsilon (stead_square_diagonal_m (48, 24), 53.6656, 0.00005);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/build/count", test_count);
  g_test_add_func ("/core/build/fence", test_fence);
  g_test_add_func ("/core/build/fence-gates", test_fence_gates);
  g_test_add_func ("/core/build/fence-refused", test_fence_refused);
  g_test_add_func ("/core/build/fence-walked", test_fence_walked);
  g_test_add_func ("/core/build/posts", test_posts);
  g_test_add_func ("/core/build/concrete", test_concrete);
  g_test_add_func ("/core/build/lumber", test_lumber);
  g_test_add_func ("/core/build/roof", test_roof);
  g_test_add_func ("/core/build/hoop", test_hoop);
  g_test_add_func ("/core/build/mesh-and-fill", test_mesh_and_fill);
  g_test_add_func ("/core/build/bill", test_bill);
  g_test_add_func ("/core/build/outline", test_outline);
  return g_test_run ();
}
