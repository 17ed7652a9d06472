/* stead-guide-page.h - a page of the help, read from a text that a person writes.
 *
 * The text is a small part of Markdown, so that it can be read as it is:
 *
 *   # Title                     once, first
 *   ## A question               a heading
 *   Some words                  a paragraph; an empty line ends it
 *   - a thing                   a point; further lines are set in by two spaces
 *   1. a step                   counted anew from the number that is written
 *   > a caution                 further lines begin with "> " too
 *   ![what it shows](NAME.png)  a picture, alone in its line
 *   | key | what it does |      a row of a table; the first is its head, "|---|---|" follows it
 *
 * and within the words **strong**, `Ctrl+K` for a key, and [words](PAGE) for a link to
 * another page.  Anything else that looks like markup is refused.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_GUIDE_HEADING,
  STEAD_GUIDE_TEXT,
  STEAD_GUIDE_POINT,
  STEAD_GUIDE_STEP,
  STEAD_GUIDE_CAUTION,
  STEAD_GUIDE_PICTURE,
  STEAD_GUIDE_HEAD,       /* of a table */
  STEAD_GUIDE_ROW,
} SteadGuideKind;

typedef struct
{
  SteadGuideKind kind;
  int            number;  /* of a step; else 0 */
  char          *markup;  /* the words, as Pango reads them: <b>, <tt>, <a href="PAGE">; of a picture
                           * plain words that say what it shows; of a row its second cell */
  char          *other;   /* (nullable): the picture's file; the first cell of a row */
} SteadGuideBlock;

typedef struct
{
  char      *title;       /* plain words */
  GPtrArray *blocks;      /* (element-type SteadGuideBlock): in the order of reading */
} SteadGuidePage;

void stead_guide_page_free (SteadGuidePage *page);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadGuidePage, stead_guide_page_free)

/**
 * stead_guide_page_parse:
 * @text: the page, UTF-8
 * @error: return location for a #GError in %STEAD_CORE_ERROR, with the number of the
 *   line.  It is meant for who writes a page, so it is not translated
 *
 * Returns: (transfer full): the page, or %NULL with @error set
 */
SteadGuidePage *stead_guide_page_parse (const char  *text,
                                        GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
