/* test-pdf-language.c - the language is appended; what is no such PDF is refused. */
#include <cairo-pdf.h>
#include <stdio.h>
#include <string.h>

#include "paper/stead-output.h"
#include "paper/stead-paper-error.h"
#include "paper/stead-pdf-language.h"

static GBytes *
make_pdf (void)
{
  GByteArray *out = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (stead_output_collect, out, 200, 200);
  cairo_t *cr;

  cairo_pdf_surface_restrict_to_version (surface, CAIRO_PDF_VERSION_1_4);   /* as stead-pdf.c does */
  cr = cairo_create (surface);
  cairo_rectangle (cr, 10, 10, 50, 50);
  cairo_fill (cr);
  cairo_show_page (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (out);
}

/* The last place of @word; the file may hold any byte. */
static gsize
last_of (GBytes     *bytes,
         const char *word)
{
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);

  for (gsize at = length - strlen (word) + 1; at > 0; at--)
    if (memcmp (data + at - 1, word, strlen (word)) == 0)
      return at - 1;
  g_assert_not_reached ();
}

static void
test_appends (void)
{
  g_autoptr(GBytes) before = make_pdf ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GBytes) after = stead_pdf_set_language (before, "es", &error);
  gsize length;
  const char *data;

  g_assert_no_error (error);
  data = g_bytes_get_data (after, &length);
  g_assert_cmpuint (length, >, g_bytes_get_size (before));
  /* Not one byte of what was there is changed. */
  g_assert_cmpint (memcmp (data, g_bytes_get_data (before, NULL), g_bytes_get_size (before)), ==, 0);
  g_assert_cmpuint (last_of (after, "/Lang (es)"), >, g_bytes_get_size (before));
  /* The chain: startxref -> the new table -> its one entry -> the new catalog. */
  {
    gsize xref = g_ascii_strtoull (data + last_of (after, "startxref") + 9, NULL, 10);
    unsigned number = 0;
    unsigned long long at = 0;

    g_assert_cmpint (sscanf (data + xref, "xref %u 1 %llu 00000 n", &number, &at), ==, 2);
    g_assert_cmpuint (at, <, xref);
    g_assert_cmpuint (g_ascii_strtoull (data + at, NULL, 10), ==, number);
    g_assert_cmpuint (at, <, last_of (after, "/Lang (es)"));
  }
  /* And back to the first table. */
  g_assert_cmpuint (g_ascii_strtoull (data + last_of (after, "/Prev") + 5, NULL, 10), ==,
                    g_ascii_strtoull ((const char *) g_bytes_get_data (before, NULL)
                                      + last_of (before, "startxref") + 9, NULL, 10));
}

static void
test_twice_is_once (void)
{
  g_autoptr(GBytes) before = make_pdf ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GBytes) once = stead_pdf_set_language (before, "en-US", &error);
  g_autoptr(GBytes) twice = NULL;

  g_assert_no_error (error);
  twice = stead_pdf_set_language (once, "en-US", &error);
  g_assert_no_error (error);
  g_assert_true (g_bytes_equal (once, twice));
}

static void
test_refuses_what_is_none (void)
{
  static const char * const texts[] = {
    "", "%PDF-1.5\n", "startxref\n9\n%%EOF\n", "startxref", "startxref\n99999999999999\n",
    "xref\n0 1\n0000000000 65535 f \ntrailer\n<< /Size 1 >>\nstartxref\n0\n%%EOF\n",
    "%PDF-1.5\nxref\n0 1\n0000000000 65535 f \ntrailer\n<< /Size 1 >>\nstartxref\n9\n%%EOF\n",
    "%PDF-1.5\nxref\n0 2\n0000000000 65535 f \n0000000900 00000 n \ntrailer\n<< /Size 2 /Root 1 0 R >>\nstartxref\n9\n",
    "%PDF-1.5\nxref\n0 9\ntrailer\n<< /Size 9 /Root 8 0 R >>\nstartxref\n9\n%%EOF\n",
    "%PDF-1.5\nxref\n0 1\n0000000000 65535 f \ntrailer\n<< << << /Size 9 /Root 8 0 R >>\nstartxref\n9\n%%EOF\n",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr(GBytes) bytes = g_bytes_new_static (texts[i], strlen (texts[i]));
      g_autoptr(GError) error = NULL;

      g_test_message ("%zu", i);
      g_assert_null (stead_pdf_set_language (bytes, "en-US", &error));
      g_assert_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_WRITE);
    }
}

/* Cut anywhere: refused or done, never out of bounds (run under a sanitizer too). */
static void
test_cut_off (void)
{
  g_autoptr(GBytes) whole = make_pdf ();

  for (gsize length = 0; length < g_bytes_get_size (whole); length++)
    {
      g_autoptr(GBytes) cut = g_bytes_new (g_bytes_get_data (whole, NULL), length);
      g_autoptr(GBytes) out = stead_pdf_set_language (cut, "en-US", NULL);

      if (out != NULL)
        g_assert_cmpuint (g_bytes_get_size (out), >, length);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/paper/pdf-language/appends", test_appends);
  g_test_add_func ("/paper/pdf-language/twice-is-once", test_twice_is_once);
  g_test_add_func ("/paper/pdf-language/refuses-what-is-none", test_refuses_what_is_none);
  g_test_add_func ("/paper/pdf-language/cut-off", test_cut_off);
  return g_test_run ();
}
