/* stead-paper-error.h - the error domain of the layer paper.
 *
 * Every message in this domain is meant for the person at the screen: a whole
 * translated sentence that says what to do.  A bug in our own code is never
 * reported here; that is what g_return_if_fail() is for.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_PAPER_ERROR (stead_paper_error_quark ())

/**
 * SteadPaperError:
 * @STEAD_PAPER_ERROR_UNKNOWN: there is no such document or format
 * @STEAD_PAPER_ERROR_WRITE: the file could not be written; an older one is whole
 */
typedef enum
{
  STEAD_PAPER_ERROR_UNKNOWN,
  STEAD_PAPER_ERROR_WRITE,
} SteadPaperError;

GQuark stead_paper_error_quark (void);

G_END_DECLS
