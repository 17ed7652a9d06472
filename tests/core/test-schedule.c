/* The critical path: by hand, and against the linear program that says the same. */
#include "core/stead-schedule.h"

#include <glpk.h>

/* A pen: money 10, call 4, buy 1 after the money, posts 4 after call and buying, wire 3
 * after them; the shelter's boards are cut, 2, while the posts go in.  By hand: 18 days, and
 * money, buying, posts, wire have none to spare; the call has 7, the boards 2. */
static void
test_by_hand (void)
{
  const SteadScheduleStep steps[] = {
    { 10, 0, { 0 } }, { 4, 0, { 0 } }, { 1, 1, { 0 } }, { 4, 2, { 1, 2 } }, { 2, 1, { 2 } }, { 3, 2, { 3, 4 } },
  };
  const int earliest[] = { 0, 0, 10, 11, 11, 15 }, latest[] = { 0, 7, 10, 11, 13, 15 };
  SteadScheduleTime out[G_N_ELEMENTS (steps)];

  g_assert_cmpint (stead_schedule (steps, G_N_ELEMENTS (steps), out), ==, 18);
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      g_assert_cmpint (out[i].earliest, ==, earliest[i]);
      g_assert_cmpint (out[i].latest, ==, latest[i]);
    }
}

static void
test_nothing (void)
{
  const SteadScheduleStep moment = { 0, 0, { 0 } };
  SteadScheduleTime out;

  g_assert_cmpint (stead_schedule (NULL, 0, NULL), ==, 0);
  g_assert_cmpint (stead_schedule (&moment, 1, &out), ==, 0);
  g_assert_cmpint (out.latest, ==, 0);
}

/* --- against GLPK -------------------------------------------------------------------------- */

#define MOST 9

/* Columns 1 to n are starts, n + 1 is the end; rows: a start is no earlier than what it waits
 * for is over, the end no earlier than any. */
static glp_prob *
program_new (const SteadScheduleStep *steps,
             int                      n)
{
  glp_prob *lp = glp_create_prob ();

  glp_add_cols (lp, n + 1);
  for (int i = 1; i <= n + 1; i++)
    glp_set_col_bnds (lp, i, GLP_LO, 0, 0);
  for (int i = 0; i < n; i++)
    for (gsize k = 0; k <= steps[i].n_after; k++)
      {
        int before = k < steps[i].n_after ? (int) steps[i].after[k] : i;
        int places[] = { 0, k < steps[i].n_after ? i + 1 : n + 1, before + 1 };
        double values[] = { 0, 1, -1 };
        int row = glp_add_rows (lp, 1);

        glp_set_mat_row (lp, row, 2, places, values);
        glp_set_row_bnds (lp, row, GLP_LO, steps[before].days, 0);
      }
  return lp;
}

static double
best (glp_prob *lp,
      int       column,
      int       direction)
{
  glp_smcp quiet;

  glp_init_smcp (&quiet);
  quiet.msg_lev = GLP_MSG_OFF;
  for (int i = 1; i <= glp_get_num_cols (lp); i++)
    glp_set_obj_coef (lp, i, i == column);
  glp_set_obj_dir (lp, direction);
  g_assert_cmpint (glp_simplex (lp, &quiet), ==, 0);
  g_assert_cmpint (glp_get_status (lp), ==, GLP_OPT);
  return glp_get_obj_val (lp);
}

static int
make_up (GRand             *rand,
         SteadScheduleStep *steps)
{
  int n = g_rand_int_range (rand, 1, MOST + 1);

  for (int i = 0; i < n; i++)
    {
      int most = MIN (i, STEAD_SCHEDULE_MOST_AFTER);

      steps[i] = (SteadScheduleStep) { .days = g_rand_int_range (rand, 0, 30) };
      for (int k = 0; k < most && g_rand_boolean (rand); k++)
        steps[i].after[steps[i].n_after++] = (gsize) g_rand_int_range (rand, 0, i);
    }
  return n;
}

static void
test_glpk (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20);

  for (int round = 0; round < 200; round++)
    {
      SteadScheduleStep steps[MOST];
      SteadScheduleTime out[MOST];
      int n = make_up (rand, steps);
      int all = stead_schedule (steps, (gsize) n, out);
      glp_prob *lp = program_new (steps, n);

      g_assert_cmpfloat_with_epsilon (best (lp, n + 1, GLP_MIN), all, 1e-6);
      glp_set_col_bnds (lp, n + 1, GLP_FX, all, all);
      for (int i = 0; i < n; i++)
        {
          g_assert_cmpfloat_with_epsilon (best (lp, i + 1, GLP_MIN), out[i].earliest, 1e-6);
          g_assert_cmpfloat_with_epsilon (best (lp, i + 1, GLP_MAX), out[i].latest, 1e-6);
        }
      glp_delete_prob (lp);
    }
  glp_free_env ();
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/schedule/by-hand", test_by_hand);
  g_test_add_func ("/core/schedule/nothing", test_nothing);
  g_test_add_func ("/core/schedule/glpk", test_glpk);
  return g_test_run ();
}
