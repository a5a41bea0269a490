'use strict';
(function () {
  var ways = Array.prototype.slice.call(document.querySelectorAll('.way'));
  var choice = document.getElementById('choice');
  var said = document.getElementById('said');
  var buttons = {};
  ['first', 'stepback', 'back', 'on', 'stepon', 'last'].forEach(function (name) {
    buttons[name] = document.getElementById(name);
  });
  var way = 0;
  var at = 0;

  function frames() {
    return Array.prototype.slice.call(ways[way].querySelectorAll('.frame'));
  }

  function show(number, quiet) {
    var all = frames();
    at = Math.max(0, Math.min(all.length - 1, number));
    ways.forEach(function (one, i) { one.hidden = i !== way; });
    all.forEach(function (one, i) { one.hidden = i !== at; });
    var links = ways[way].querySelectorAll('.list a');
    for (var i = 0; i < links.length; i++) {
      if (i === at) {
        links[i].setAttribute('aria-current', 'true');
        var box = links[i].closest('.list');
        box.scrollTop = links[i].offsetTop - box.clientHeight / 2;
      } else {
        links[i].removeAttribute('aria-current');
      }
    }
    buttons.first.disabled = buttons.back.disabled = buttons.stepback.disabled = at === 0;
    buttons.last.disabled = buttons.on.disabled = buttons.stepon.disabled = at === all.length - 1;
    if (!quiet) {
      said.textContent = all[at].getAttribute('data-said');
      history.replaceState(null, '', '#' + all[at].id);
    }
  }

  /* The first act of the step before or after. */
  function step(by) {
    var all = frames();
    var to = at;
    var own = all[at].getAttribute('data-step');
    while (to + by >= 0 && to + by < all.length && all[to].getAttribute('data-step') === own) {
      to += by;
    }
    if (by < 0) {
      var there = all[to].getAttribute('data-step');
      while (to > 0 && all[to - 1].getAttribute('data-step') === there) {
        to--;
      }
    }
    show(to);
  }

  function locate(id) {
    for (var w = 0; w < ways.length; w++) {
      var all = ways[w].querySelectorAll('.frame');
      for (var i = 0; i < all.length; i++) {
        if (all[i].id === id) {
          way = w;
          if (choice) { choice.value = String(w); }
          show(i);
          return true;
        }
      }
    }
    return false;
  }

  var doing = {
    first: function () { show(0); },
    stepback: function () { step(-1); },
    back: function () { show(at - 1); },
    on: function () { show(at + 1); },
    stepon: function () { step(1); },
    last: function () { show(frames().length - 1); }
  };
  var keys = {ArrowLeft: 'back', ArrowRight: 'on', Home: 'first', End: 'last', p: 'stepback', n: 'stepon'};
  Object.keys(doing).forEach(function (name) { buttons[name].addEventListener('click', doing[name]); });
  document.addEventListener('keydown', function (event) {
    var typing = /^(SELECT|INPUT|TEXTAREA)$/.test(event.target.tagName);
    if (keys[event.key] && !typing && !event.ctrlKey && !event.altKey && !event.metaKey) {
      event.preventDefault();
      doing[keys[event.key]]();
    }
  });
  document.addEventListener('click', function (event) {
    var link = event.target.closest('.list a');
    if (link) {
      event.preventDefault();
      locate(link.getAttribute('href').slice(1));
    }
  });
  if (choice) {
    choice.addEventListener('change', function () {
      way = Number(choice.value);
      show(0);
    });
  }
  document.querySelector('.moves').hidden = false;
  if (locate(location.hash.slice(1))) {
    window.addEventListener('load', function () { window.scrollTo(0, 0); });
  } else {
    show(0, true);
  }
})();
