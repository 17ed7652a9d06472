/* stead-store-error.h - the error domain of the layer store.
 *
 * Every message in this domain is meant for the person at the screen: a whole
 * translated sentence that says what to do.  A bug in our own code is never
 * reported here; that is what g_return_if_fail() is for.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_STORE_ERROR (stead_store_error_quark ())

/**
 * SteadStoreError:
 * @STEAD_STORE_ERROR_NOT_A_FARM: the file is not one of ours
 * @STEAD_STORE_ERROR_NEWER: a later version of the program wrote it
 * @STEAD_STORE_ERROR_DAMAGED: the file is damaged; nothing was changed in it
 * @STEAD_STORE_ERROR_READ_ONLY: the file or its folder cannot be written
 * @STEAD_STORE_ERROR_BUSY: another window or program is writing to it
 * @STEAD_STORE_ERROR_FULL: the disk is full
 * @STEAD_STORE_ERROR_IO: the disk failed, or the file went away
 * @STEAD_STORE_ERROR_INVALID: a fact breaks a rule of the farm file
 * @STEAD_STORE_ERROR_SIGNED: a signed row would have been changed
 * @STEAD_STORE_ERROR_NOT_FOUND: there is no such row (any more)
 * @STEAD_STORE_ERROR_CANCELLED: the person stopped it; nothing was kept
 */
typedef enum
{
  STEAD_STORE_ERROR_NOT_A_FARM,
  STEAD_STORE_ERROR_NEWER,
  STEAD_STORE_ERROR_DAMAGED,
  STEAD_STORE_ERROR_READ_ONLY,
  STEAD_STORE_ERROR_BUSY,
  STEAD_STORE_ERROR_FULL,
  STEAD_STORE_ERROR_IO,
  STEAD_STORE_ERROR_INVALID,
  STEAD_STORE_ERROR_SIGNED,
  STEAD_STORE_ERROR_NOT_FOUND,
  STEAD_STORE_ERROR_CANCELLED,
} SteadStoreError;

GQuark stead_store_error_quark (void);

G_END_DECLS
