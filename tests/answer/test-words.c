/* test-words.c - words and numbers that every sentence shares. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-words.h"

#include <string.h>

static void
test_plain (void)
{
  static const struct { const char *markup; const char *plain; } texts[] = {
    { "At <b>$4.50</b> a dozen", "At $4.50 a dozen" },
    { "a &lt; b &amp; c &gt; d &quot;e&quot; &apos;f&apos; &#39;g&#39; &#x2212;", "a < b & c > d \"e\" 'f' 'g' −" },
    { "", "" }, { "no markup", "no markup" }, { "half <b", "half <b" }, { "half & half", "half & half" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *plain = stead_words_plain (texts[i].markup);

      g_assert_cmpstr (plain, ==, texts[i].plain);
    }
}

/* What GLib escapes comes back as it was. */
static void
test_plain_undoes_escaping (void)
{
  static const char * const texts[] = { "Hens & <b>chicks</b>", "\"quoted\" 'both'", "a;b&c;d", "&amp;" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *escaped = g_markup_escape_text (texts[i], -1);
      g_autofree char *plain = stead_words_plain (escaped);

      g_assert_cmpstr (plain, ==, texts[i]);
    }
}

static void
test_units (void)
{
  static const struct { SteadPack pack; double count; const char *text; } units[] = {
    { STEAD_PACK_DOZEN, 46, "46 dozen" }, { STEAD_PACK_DOZEN, 12.5, "12.5 dozen" }, { STEAD_PACK_JAR, 1, "1 jar" },
    { STEAD_PACK_JAR, 0, "0 jars" }, { STEAD_PACK_JAR, 1.5, "1.5 jars" }, { STEAD_PACK_TRAY, 1200, "1,200 trays" },
    { STEAD_PACK_HALF_DOZEN, 2, "2 half dozens" }, { STEAD_PACK_POUND, 1, "1 pound" },
    { STEAD_PACK_KILOGRAM, 0.5, "0.5 kilograms" }, { STEAD_PACK_PIECE, 1, "1 piece" }, { STEAD_PACK_PACK, 3, "3 packs" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      g_autofree char *text = stead_words_units (units[i].pack, units[i].count);

      NUMBERS_ARE (text, units[i].count);
      if (farm_in_english ())
        g_assert_cmpstr (text, ==, units[i].text);
    }
}

/* Every pack has all of its words, and no two packs share one. */
static void
test_packs (void)
{
  const char *(*const words[]) (SteadPack pack) = {
    stead_words_per_unit, stead_words_one_unit, stead_words_unit_plural, stead_words_pack_name,
  };

  for (gsize w = 0; w < G_N_ELEMENTS (words); w++)
    for (SteadPack a = STEAD_PACK_DOZEN; a <= STEAD_PACK_PACK; a++)
      for (SteadPack b = a; b <= STEAD_PACK_PACK; b++)
        {
          g_assert_cmpuint (strlen (words[w] (a)), >, 2);
          g_assert_true (a == b || !g_str_equal (words[w] (a), words[w] (b)));
        }
}

static void
test_counts (void)
{
  g_autofree char *eggs = stead_words_eggs (1234567);
  g_autofree char *hen = stead_words_hens (1);
  g_autofree char *days = stead_words_days (9);
  g_autofree char *percent = stead_words_percent (0.8333, 1);

  NUMBERS_ARE (eggs, 1234567);
  NUMBERS_ARE (percent, 83.3);
  if (!farm_in_english ())
    return;
  g_assert_cmpstr (eggs, ==, "1,234,567 eggs");
  g_assert_cmpstr (hen, ==, "1 hen");
  g_assert_cmpstr (days, ==, "9 days");
  g_assert_cmpstr (percent, ==, "83.3%");
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/words/plain", test_plain);
  g_test_add_func ("/answer/words/plain-undoes-escaping", test_plain_undoes_escaping);
  g_test_add_func ("/answer/words/units", test_units);
  g_test_add_func ("/answer/words/packs", test_packs);
  g_test_add_func ("/answer/words/counts", test_counts);
  return g_test_run ();
}
