/* test-any-day.c - the demo farm asked everything, in other units and money, and long after its last entry.
 *
 * Whoever asks, there is a whole sentence and figures that are numbers, or the reason why not.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-question.h"

#include "demo.h"
#include "farm.h"

static const DemoView views[] = {
  { "/answer/any-day/as-it-is", STEAD_UNITS_US, "USD", 0 },
  { "/answer/any-day/metric", STEAD_UNITS_METRIC, "EUR", 0 },
  { "/answer/any-day/without-small-money", STEAD_UNITS_METRIC, "JPY", 1 },
  { "/answer/any-day/a-month-later", STEAD_UNITS_US, "USD", 31 },
  { "/answer/any-day/years-later", STEAD_UNITS_METRIC, "MXN", 1100 },
};

/* --- the claims ------------------------------------------------------------------------- */

/* Nothing of a number that is none, of a missing text, of a mark or of a pattern shows through. */
static void
assert_whole (const char *what,
              const char *sentence)
{
  static const char * const slips[] = { "(null)", "%s", "%d", "<b>", "  ", "--", "-$0.00", " ." };

  if (g_utf8_strlen (sentence, -1) <= 10 || strchr (".!?”", sentence[strlen (sentence) - 1]) == NULL)
    g_error ("%s: no whole sentence: “%s”", what, sentence);
  if (g_regex_match_simple ("\\b(nan|inf)\\b", sentence, 0, 0))
    g_error ("%s: no number in “%s”", what, sentence);
  for (gsize i = 0; i < G_N_ELEMENTS (slips); i++)
    if (strstr (sentence, slips[i]) != NULL)
      g_error ("%s: “%s” in “%s”", what, slips[i], sentence);
}

static void
assert_numbers (const char *what,
                JsonNode   *node);

static void
assert_member (JsonObject *object,
               const char *name,
               JsonNode   *node,
               gpointer    what)
{
  g_autofree char *path = g_strconcat (what, ".", name, NULL);

  assert_numbers (path, node);
}

static void
assert_numbers (const char *what,
                JsonNode   *node)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    json_object_foreach_member (json_node_get_object (node), assert_member, (char *) what);
  else if (JSON_NODE_HOLDS_ARRAY (node))
    for (guint i = 0; i < json_array_get_length (json_node_get_array (node)); i++)
      assert_numbers (what, json_array_get_element (json_node_get_array (node), i));
  else if (json_node_get_value_type (node) == G_TYPE_DOUBLE && !isfinite (json_node_get_double (node)))
    g_error ("%s is no number", what);
}

static gboolean
ask (SteadStore *store,
     const char *name,
     const char *of)
{
  g_autofree char *what = g_strdup_printf ("%s of %s", name, of != NULL ? of : "all");
  g_autofree char *sentence = NULL;
  g_autoptr(JsonNode) figures = NULL;
  g_autoptr(GError) error = NULL;

  if (stead_question_ask (store, name, of, &sentence, &figures, &error))
    {
      assert_whole (what, sentence);
      assert_numbers (what, figures);
      return TRUE;
    }
  g_test_message ("%s: %s", what, error->message);
  g_assert_cmpint (error->domain, ==, STEAD_ANSWER_ERROR);
  assert_whole (what, error->message);
  return FALSE;
}

/* The line over each post: short enough for it. */
static void
assert_strip (SteadStore *store)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStripAnswer) strip = stead_strip_answer_new (store, NULL, 0, &error);
  const char *figures[] = { strip->today, strip->raise, strip->make, strip->check, strip->price, strip->sell,
                            strip->fund, strip->keep, strip->show };

  g_assert_no_error (error);
  for (gsize i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      g_assert_cmpint (g_utf8_strlen (figures[i], -1), >, 0);
      g_assert_cmpint (g_utf8_strlen (figures[i], -1), <, 40);
      g_assert_false (g_regex_match_simple ("\\b(nan|inf)\\b", figures[i], 0, 0));
    }
}

static void
test_view (Demo          *demo,
           gconstpointer  data)
{
  gsize n;
  const SteadQuestion *questions = stead_question_list (&n);
  guint asked = 0, answered = 0;

  demo_look (demo, data);
  for (gsize i = 0; i < n; i++)
    {
      g_autoptr(GPtrArray) names = demo_names (demo, questions[i].of);

      for (guint k = 0; k < names->len; k++, asked++)
        answered += ask (demo->store, questions[i].name, names->pdata[k]);
    }
  assert_strip (demo->store);
  g_test_message ("%u of %u answered", answered, asked);
  g_assert_cmpuint (answered, >, asked / 2);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    g_test_add (views[i].path, Demo, &views[i], demo_set_up, test_view, demo_tear_down);
  return g_test_run ();
}
