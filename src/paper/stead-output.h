/* stead-output.h - what was made, put onto the disk whole or not at all. */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_output_write:
 * @path: where to; an older file stays whole if this fails
 * @bytes: all of it
 * @error: %STEAD_PAPER_ERROR_WRITE with the reason and what to do
 *
 * Written to a temporary name beside @path, synced and renamed.
 */
gboolean stead_output_write (const char  *path,
                             GBytes      *bytes,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Sets %STEAD_PAPER_ERROR_WRITE for @path: what failed in @reason's words, and what to do. */
void stead_output_set_error (GError     **error,
                             const char  *path,
                             const char  *reason);

/* A cairo_write_func_t whose closure is a GByteArray. */
cairo_status_t stead_output_collect (void                *closure,
                                     const unsigned char *data,
                                     unsigned int         length);

G_END_DECLS
