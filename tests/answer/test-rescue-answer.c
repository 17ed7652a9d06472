/* test-rescue-answer.c - what came of a damaged farm, in words: a farm that is whole, and one that is not. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-rescue-answer.h"

static SteadRescue *
rescue_new (guint64 rows,
            guint64 refused,
            guint64 orphans)
{
  SteadRescue *rescue = g_new0 (SteadRescue, 1);

  rescue->n_rows = rows;
  rescue->n_refused = refused;
  rescue->n_orphans = orphans;
  rescue->lost = g_ptr_array_new_with_free_func (g_free);
  rescue->faults = g_ptr_array_new_with_free_func (g_free);
  return rescue;
}

static void
assert_sentence (const SteadRescue *rescue,
                 const char        *words)
{
  g_autofree char *sentence = stead_rescue_answer_sentence (rescue);

  if (farm_in_english ())
    g_assert_cmpstr (sentence, ==, words);
}

static void
test_whole (void)
{
  g_autoptr(SteadRescue) one = rescue_new (1, 0, 0), many = rescue_new (1201, 0, 0);

  assert_sentence (one, "1 row could be read and is in the new farm. Nothing was lost but the steps of undo.");
  assert_sentence (many, "1201 rows could be read and are in the new farm. Nothing was lost but the steps of undo.");
}

static void
test_left_out (void)
{
  g_autoptr(SteadRescue) one = rescue_new (7, 1, 1), many = rescue_new (7, 2, 3);
  g_autofree char *sentence = stead_rescue_answer_sentence (many);

  assert_sentence (one, "7 rows could be read and are in the new farm. 1 row makes no sense any more and was left out. "
                        "1 row was left out because what it belongs to is lost.");
  assert_sentence (many, "7 rows could be read and are in the new farm. 2 rows make no sense any more and were left out. "
                         "3 rows were left out because what they belong to is lost.");
  NUMBERS_ARE (sentence, 7, 2, 3);
}

/* Of each kind no more lines than asked for; the rest is counted. */
static void
test_lines (void)
{
  g_autoptr(SteadRescue) rescue = rescue_new (5, 0, 0);
  g_autofree char *most = NULL, *all = NULL;

  for (int i = 1; i <= 4; i++)
    g_ptr_array_add (rescue->lost, g_strdup_printf ("lost %d", i));
  g_ptr_array_add (rescue->faults, g_strdup ("fault a"));
  g_ptr_array_add (rescue->faults, g_strdup ("fault b"));
  most = stead_rescue_answer_text (rescue, 1);
  all = stead_rescue_answer_text (rescue, 10);
  if (!farm_in_english ())
    return;
  g_assert_cmpstr (most, ==, "5 rows could be read and are in the new farm.\nlost 1\nThere are 3 more of this kind.\n"
                             "fault a\nThere is 1 more of this kind.");
  g_assert_cmpstr (all, ==, "5 rows could be read and are in the new farm.\nlost 1\nlost 2\nlost 3\nlost 4\n"
                            "fault a\nfault b");
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/rescue-answer/whole", test_whole);
  g_test_add_func ("/answer/rescue-answer/left-out", test_left_out);
  g_test_add_func ("/answer/rescue-answer/lines", test_lines);
  return g_test_run ();
}
