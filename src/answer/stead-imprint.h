/* stead-imprint.h - what every paper says about where it comes from. */
#pragma once

#include "core/stead-calendar.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  char     *farm_name;
  char     *currency;    /* ISO 4217 */
  gboolean  metric;      /* A4, not US Letter */
  SteadDay  today;       /* the day on which the paper is made */
  gint64    change_no;   /* of the farm file, so that a figure can be traced */
} SteadImprint;

void stead_imprint_free (SteadImprint *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadImprint, stead_imprint_free)

/**
 * stead_imprint_new:
 * @store: an open farm
 * @error: return location for a #GError
 *
 * Returns: (transfer full): read once; nothing in it changes with the farm
 */
SteadImprint *stead_imprint_new (SteadStore  *store,
                                 GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_imprint_language:
 *
 * Returns: (transfer none): the language that our texts come in now, as a tag of
 *   BCP 47: "en-US"; it follows the translation that is in use, not the locale
 */
const char *stead_imprint_language (void);

G_END_DECLS
