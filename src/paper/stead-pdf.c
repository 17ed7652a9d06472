/* stead-pdf.c - pages as a PDF. */
#include "config.h"

#include "paper/stead-output.h"
#include "paper/stead-paper-error.h"
#include "paper/stead-pdf-language.h"
#include "paper/stead-pdf.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

static void
set_metadata (cairo_surface_t  *surface,
              const SteadPages *pages)
{
  g_autofree char *day = stead_day_format (stead_pages_day (pages), STEAD_DAY_STYLE_ISO);
  g_autofree char *noon = g_strdup_printf ("%sT12:00:00Z", day);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, stead_pages_title (pages));
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_AUTHOR, stead_pages_author (pages));
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Steading " STEAD_VERSION);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, noon);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, noon);
}

/* A page with one heading needs no outline; cairo takes an empty one well. */
static void
add_to_outline (const char *text,
                int         page,
                double      y,
                gpointer    data)
{
  g_autofree char *number = g_strdup_printf ("page=%d pos=[0 %d]", page + 1, (int) y - 6);

  cairo_pdf_surface_add_outline (data, CAIRO_PDF_OUTLINE_ROOT, text, number, CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

/* Has to be the first on a page, before any tag: on one that is still clear cairo 1.16 takes a
 * picture without a path, such as an emoji that begins the name of the farm, for the whole of
 * the page, and forgets the tags before it; what is written then fails, or ends the program. */
static void
paint_ground (cairo_t *cr,
              double   width,
              double   height)
{
  cairo_save (cr);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_fill (cr);
  cairo_restore (cr);
}

GBytes *
stead_pdf_from_pages (const SteadPages  *pages,
                      const char        *language,
                      GError           **error)
{
  g_autoptr(GByteArray) collected = g_byte_array_new ();
  g_autoptr(GBytes) pdf = NULL, told = NULL;
  g_autoptr(GError) problem = NULL;
  cairo_surface_t *surface;
  cairo_status_t status;
  double width, height;
  cairo_t *cr;

  stead_pages_size (pages, &width, &height);
  surface = cairo_pdf_surface_create_for_stream (stead_output_collect, collected, width, height);
  /* From 1.5 on, newer cairos write a cross-reference stream, to which no language can be appended as text. */
  cairo_pdf_surface_restrict_to_version (surface, CAIRO_PDF_VERSION_1_4);
  set_metadata (surface, pages);
  cr = cairo_create (surface);
  paint_ground (cr, width, height);
  cairo_tag_begin (cr, "Document", NULL);
  for (int page = 0; page < stead_pages_count (pages); page++)
    {
      stead_pages_draw (pages, page, cr);
      if (page + 1 == stead_pages_count (pages))
        break;
      cairo_show_page (cr);
      paint_ground (cr, width, height);
    }
  cairo_tag_end (cr, "Document");
  stead_pages_headings (pages, add_to_outline, surface);
  cairo_show_page (cr);
  status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_WRITE,
                   _("The PDF could not be made (%s)."), cairo_status_to_string (status));
      return NULL;
    }
  pdf = g_byte_array_free_to_bytes (g_steal_pointer (&collected));
  told = stead_pdf_set_language (pdf, language, &problem);
  if (told != NULL)
    return g_steal_pointer (&told);
  g_debug ("the PDF goes without its language: %s", problem->message);
  return g_steal_pointer (&pdf);
}
