/* Cost of unfinished units, of lost ones, and the schedule of goods. */
#include "core/stead-batch-loss.h"
#include "core/stead-goods.h"
#include "core/stead-process-cost.h"

#include <math.h>

/* OpenStax Principles of Accounting vol. 2, section 5.3 (read). */
static void
test_published (void)
{
  SteadProcess process = {
    .completed_units = 7500, .end_units = 1200,
    .elements = { [STEAD_ELEMENT_MATERIALS] = { .end_frac = 1, .added_cents = 1017900 },
                  [STEAD_ELEMENT_CONVERSION] = { .end_frac = 0.35, .added_cents = 2217600 } },
  };
  SteadProcessFigures figures;

  stead_process_figures (&process, &figures);
  g_assert_cmpfloat_with_epsilon (figures.equivalent_units[STEAD_ELEMENT_MATERIALS], 8700, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures.equivalent_units[STEAD_ELEMENT_CONVERSION], 7920, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures.unit_cents[STEAD_ELEMENT_MATERIALS], 117, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures.unit_cents[STEAD_ELEMENT_CONVERSION], 280, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures.transferred_out_cents, 2977500, 1e-6);
  g_assert_cmpfloat_with_epsilon (figures.end_in_process_cents, 258000, 1e-6);
}

static SteadProcess
random_process (GRand *rand)
{
  SteadProcess process = {
    .method = (SteadProcessMethod) g_rand_int_range (rand, 0, 2),
    .begin_units = g_rand_int_range (rand, 0, 500),
    .completed_units = g_rand_int_range (rand, 600, 2000),
    .end_units = g_rand_int_range (rand, 0, 500),
    .normal_lost_units = g_rand_int_range (rand, 0, 100),
    .abnormal_lost_units = g_rand_int_range (rand, 0, 100),
  };

  for (int e = 0; e < STEAD_N_ELEMENTS; e++)
    process.elements[e] = (SteadElementStage) { g_rand_double (rand), g_rand_double (rand),
                                                g_rand_double (rand), g_rand_int_range (rand, 0, 90000),
                                                g_rand_int_range (rand, 1, 900000) };
  return process;
}

/* Invariant 1: out + abnormal + end = opening + added. */
static void
test_all_money_goes_somewhere (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (5);

  for (int round = 0; round < 2000; round++)
    {
      SteadProcess process = random_process (rand);
      SteadProcessFigures figures;

      stead_process_figures (&process, &figures);
      g_assert_cmpfloat_with_epsilon (figures.transferred_out_cents + figures.abnormal_loss_cents
                                      + figures.end_in_process_cents, figures.total_cents, 1e-5);
      g_assert_cmpfloat (figures.normal_loss_cents, >=, 0);
    }
}

/* Without opening stock the two methods agree. */
static void
test_methods_agree_without_opening (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (6);

  for (int round = 0; round < 500; round++)
    {
      SteadProcess process = random_process (rand);
      SteadProcessFigures average, fifo;

      process.begin_units = 0;
      for (int e = 0; e < STEAD_N_ELEMENTS; e++)
        process.elements[e].begin_cents = 0;
      process.method = STEAD_PROCESS_WEIGHTED_AVERAGE;
      stead_process_figures (&process, &average);
      process.method = STEAD_PROCESS_FIFO;
      stead_process_figures (&process, &fifo);
      g_assert_cmpfloat_with_epsilon (average.transferred_out_cents, fifo.transferred_out_cents, 1e-6);
      g_assert_cmpfloat_with_epsilon (average.unit_total_cents, fifo.unit_total_cents, 1e-9);
    }
}

static void
test_money_without_units (void)
{
  SteadProcess process = { .elements = { [STEAD_ELEMENT_CONVERSION] = { .added_cents = 100 } } };
  SteadProcessFigures figures;

  stead_process_figures (&process, &figures);
  g_assert_cmpfloat (figures.unit_cents[STEAD_ELEMENT_MATERIALS], ==, 0);
  g_assert_true (isnan (figures.unit_cents[STEAD_ELEMENT_CONVERSION]));
}

/* Lecture notes on process costing, pp. 146 to 154 (read): 1,000 kg for 20,700,
 * 10 percent lost in the ordinary way. */
static void
test_batch_loss (void)
{
  SteadBatchLoss batch = { .input_units = 1000, .input_cents = 2070000, .normal_loss_frac = 0.1,
                           .output_units = 950 };
  SteadBatchLossFigures figures;

  stead_batch_loss_figures (&batch, &figures);
  g_assert_cmpfloat_with_epsilon (figures.unit_cents, 2300, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures.abnormal_gain_cents, 115000, 1e-6);
  g_assert_cmpfloat (figures.abnormal_loss_units, ==, 0);
  batch.scrap_price_cents = 180;
  batch.output_units = 900;
  stead_batch_loss_figures (&batch, &figures);
  g_assert_cmpfloat_with_epsilon (figures.output_cents, 2052000, 1e-6);
  /* The other convention: good units carry all of the normal loss. */
  batch = (SteadBatchLoss) { .rule = STEAD_LOSS_ALL_UNITS, .input_units = 1000, .input_cents = 2070000,
                             .normal_loss_frac = 0.1, .output_units = 800 };
  stead_batch_loss_figures (&batch, &figures);
  g_assert_cmpfloat_with_epsilon (figures.abnormal_loss_cents, 207000, 1e-6);
  g_assert_cmpfloat_with_epsilon (figures.output_cents, 1863000, 1e-6);
  batch = (SteadBatchLoss) { .input_units = 10, .input_cents = 100, .normal_loss_frac = 1 };
  stead_batch_loss_figures (&batch, &figures);
  g_assert_true (isnan (figures.unit_cents));
}

/* OpenStax vol. 2, section 4.5 (read). */
static void
test_goods (void)
{
  SteadGoods goods = { .begin_materials = 2500, .purchases = 10500, .end_materials = 11600, .labor = 366,
                       .overhead = 915, .begin_in_process = 1000, .end_in_process = 1025,
                       .begin_finished = 1531, .end_finished = 1725, .sales = 3000, .selling = 100 };
  SteadGoodsFigures figures;

  stead_goods_figures (&goods, &figures);
  g_assert_cmpfloat (figures.materials_used, ==, 1400);
  g_assert_cmpfloat (figures.made, ==, 2656);
  g_assert_cmpfloat (figures.sold, ==, 2462);
  g_assert_cmpfloat (figures.gross_margin, ==, 3000 - 2462);
  g_assert_cmpfloat (figures.profit, ==, 3000 - 2462 - 100);
  stead_goods_from_made (&goods, 1300, &figures);
  g_assert_cmpfloat (figures.available, ==, 2831);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/process-cost/published", test_published);
  g_test_add_func ("/core/process-cost/all-money-goes-somewhere", test_all_money_goes_somewhere);
  g_test_add_func ("/core/process-cost/methods-agree-without-opening", test_methods_agree_without_opening);
  g_test_add_func ("/core/process-cost/money-without-units", test_money_without_units);
  g_test_add_func ("/core/batch-loss/published", test_batch_loss);
  g_test_add_func ("/core/goods/published", test_goods);
  return g_test_run ();
}
