// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.everyday;

import org.raftgauge.batch.run.Progress;

/** Tells nobody how far a run is. */
final class SilentProgress implements Progress {

  @Override
  public void waitingFor(String holder) {}

  @Override
  public void started(int photos) {}

  @Override
  public void done(String photo) {}

  @Override
  public void known(String photo) {}

  @Override
  public void readAgain(String photo, String why) {}

  @Override
  public void failed(String photo, Throwable failure) {
    throw new IllegalStateException(photo, failure);
  }

  @Override
  public void finished() {}
}
