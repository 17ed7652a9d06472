/* stead-guide.h - the help: pages in the language of the program, in the order of reading.
 *
 * They are written in data/help, a folder a language, and are part of the program.  A page
 * about a place bears the name of the place: "price".
 */
#pragma once

#include "core/stead-guide-page.h"

G_BEGIN_DECLS

/* The page that is shown to somebody who is in no place. */
#define STEAD_GUIDE_FIRST "start"

/* Returns: (transfer none) (array zero-terminated=1): names of all pages, in order */
const char * const *stead_guide_get_names (void);

/**
 * stead_guide_read:
 * @name: of a page: "price"
 *
 * Returns: (transfer full) (nullable): the page, or %NULL if there is none of that name
 */
SteadGuidePage *stead_guide_read (const char *name) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_guide_picture_path:
 * @file: of a picture, as a page names it: "price.png"
 *
 * Returns: (transfer full): its path among the program's resources
 */
char *stead_guide_picture_path (const char *file) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
