/* test-guide-page.c - pages of the help, as a person writes them.
 *
 * What the marks mean is CommonMark 0.31 (2024): headings 4.2, paragraphs 4.8, lists 5.2
 * and 5.3, block quotes 5.1, strong emphasis 6.2, code spans 6.1, links 6.3, images 6.4.
 * Tables are the usual extension of it.  The markup is Pango's (its page "Markup").
 */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-guide-page.h"

static const char page_text[] =
  "# Today\n"
  "\n"
  "Type it as you\n"
  "would say it: “22 eggs” & more.\n"
  "## What is **due**?\n"
  "- one thing\n"
  "  that goes on\n"
  "- another\n"
  "\n"
  "3. Press `Ctrl+K`.\n"
  "4. Read [Raise](raise).\n"
  "> Ask a\n"
  "> veterinarian.\n"
  "\n"
  "![The place Today: what is due & done](today.png)\n"
  "| Key | What it does |\n"
  "|---|---|\n"
  "| `F1` | Help |\n";

static void
check_block (const SteadGuidePage *page,
             guint                 n,
             SteadGuideKind        kind,
             int                   number,
             const char           *markup,
             const char           *other)
{
  const SteadGuideBlock *block;

  g_assert_cmpuint (n, <, page->blocks->len);
  block = page->blocks->pdata[n];
  g_assert_cmpint (block->kind, ==, kind);
  g_assert_cmpint (block->number, ==, number);
  g_assert_cmpstr (block->markup, ==, markup);
  g_assert_cmpstr (block->other, ==, other);
}

static void
test_blocks (void)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadGuidePage) page = stead_guide_page_parse (page_text, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (page->title, ==, "Today");
  g_assert_cmpuint (page->blocks->len, ==, 10);
  check_block (page, 0, STEAD_GUIDE_TEXT, 0, "Type it as you would say it: “22 eggs” &amp; more.", NULL);
  check_block (page, 1, STEAD_GUIDE_HEADING, 0, "What is <b>due</b>?", NULL);
  check_block (page, 2, STEAD_GUIDE_POINT, 0, "one thing that goes on", NULL);
  check_block (page, 3, STEAD_GUIDE_POINT, 0, "another", NULL);
  check_block (page, 4, STEAD_GUIDE_STEP, 3, "Press <tt>Ctrl+K</tt>.", NULL);
  check_block (page, 5, STEAD_GUIDE_STEP, 4, "Read <a href=\"raise\">Raise</a>.", NULL);
  check_block (page, 6, STEAD_GUIDE_CAUTION, 0, "Ask a veterinarian.", NULL);
  check_block (page, 7, STEAD_GUIDE_PICTURE, 0, "The place Today: what is due & done", "today.png");
  check_block (page, 8, STEAD_GUIDE_HEAD, 0, "What it does", "Key");
  check_block (page, 9, STEAD_GUIDE_ROW, 0, "Help", "<tt>F1</tt>");
}

static void
test_words_are_escaped (void)
{
  g_autoptr(SteadGuidePage) page = stead_guide_page_parse ("# T\n**a < b & c** > d\n", NULL);

  check_block (page, 0, STEAD_GUIDE_TEXT, 0, "<b>a &lt; b &amp; c</b> &gt; d", NULL);
}

/* Which line is wrong is told; a line that is not closed is found where its block ends. */
static void
test_slips (void)
{
  static const struct { const char *text; const char *line; } slips[] = {
    { "", "Line 1," },
    { "Today\n", "Line 1," },
    { "# \n", "Line 1," },
    { "# T\n\n### Deep\n", "Line 3," },
    { "# T\n**open\n\n", "Line 3," },
    { "# T\n`open\n", "Line 3," },
    { "# T\n[words](no end\n", "Line 3," },
    { "# T\n[words](https://example.org)\n", "Line 3," },
    { "# T\nan <i>element</i>\n", "Line 3," },
    { "# T\n* a point of the other kind\n\n", "Line 3," },
    { "# T\n![no file]\n", "Line 2," },
    { "# T\n![a file](../elsewhere.png)\n", "Line 2," },
    { "# T\n| one |\n", "Line 2," },
    { "# T\n|---|---|\n", "Line 2," },
    { "# T\n  set in, without a point\n", "Line 2," },
    { "# T\n>close\n", "Line 2," },
    { "# T\n\xff\n", "Line 1," },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (slips); i++)
    {
      g_autoptr(GError) error = NULL;
      g_autoptr(SteadGuidePage) page = stead_guide_page_parse (slips[i].text, &error);

      g_assert_null (page);
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE);
      g_test_message ("slip %u: %s", (guint) i, error->message);
      g_assert_true (g_str_has_prefix (error->message, slips[i].line));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/guide-page/blocks", test_blocks);
  g_test_add_func ("/core/guide-page/words-are-escaped", test_words_are_escaped);
  g_test_add_func ("/core/guide-page/slips-are-told-by-line", test_slips);
  return g_test_run ();
}
